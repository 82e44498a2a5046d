import type { Session } from '#client/session/types.ts';
import { lerp, type Point } from '#model/geometry/vec.ts';
import { type AskWay, askWay } from './askWay.ts';
import { lower, nameOfItem } from './describe.ts';
import { followTape } from './followTape.ts';
import type { Item } from './items.ts';
import { planStoreOf, type TapeThing, type TapeWay } from './planStore.ts';
import { edgeToEdge, lineOfItem, sayStraight, tapeThingAt, wayOfTape } from './tapeBetween.ts';
import { bodyOfItem } from './things.ts';

/** Lays one end of the tape; the second says all there is to say between the two, a third begins again. */
export function layTapeEnd(session: Session, at: Point, on: TapeThing | null, ask: AskWay = askWay): void {
  const store = planStoreOf(session);
  const { tape, tapeOn } = store.state();
  const [from] = tape;
  if (tape.length !== 1 || !from) {
    store.set({ tape: [at], tapeOn: [on], tapeEdge: null, tapeWay: null });
    followTape(session, () => findWayAgain(session));
    session.announce(`Tape from ${on ? lower(nameOfItem(session, on)) : 'here'}. Press the other end.`, true);
    return;
  }
  const ends = [from, at];
  const both = [tapeOn[0] ?? null, on];
  const edge = tapeOn[0] && on ? edgeToEdge(session, tapeOn[0], on) : null;
  store.set({ tape: ends, tapeOn: both, tapeEdge: edge, tapeWay: null });
  followTape(session, () => findWayAgain(session));
  const said = `Tape: ${sayStraight(session, ends, both).join('; ')}`;
  session.announce(`${said}.`, true);
  void sayWayWhenKnown(session, said, wayOfTape(session, ends, both, ask));
}

function findWayAgain(session: Session): void {
  const { tape, tapeOn } = planStoreOf(session).state();
  if (tape.length === 2) void sayWayWhenKnown(session, 'Something was moved', wayOfTape(session, tape, tapeOn, askWay));
}

async function sayWayWhenKnown(session: Session, said: string, asked: Promise<TapeWay>): Promise<void> {
  const store = planStoreOf(session);
  const { tape } = store.state();
  const way = await asked;
  // Meanwhile something else may have been measured.
  if (store.state().tape !== tape) return;
  store.set({ tapeWay: way });
  session.announce(`${said}. ${way.said}`, true);
}

/** An end of the tape on whatever is at a point (mm). */
export const layTapeAt = (session: Session, at: Point): void => layTapeEnd(session, at, tapeThingAt(session, at));

/** The tape from thing to thing, by the keys or the list: its ends lie where the two are nearest. */
export function layTapeOn(session: Session, item: Item, ask: AskWay = askWay): void {
  const store = planStoreOf(session);
  const { tape, tapeOn } = store.state();
  const [first] = tapeOn;
  const nearest = tape.length === 1 && first ? edgeToEdge(session, first, item) : null;
  if (nearest) {
    store.set({ tape: [nearest.from], tapeOn: [first ?? null] });
    layTapeEnd(session, nearest.to, item, ask);
    return;
  }
  if (tape.length === 1) {
    session.announce('The tape begins there. Choose another thing for its other end.');
    return;
  }
  layTapeEnd(session, middleOf(session, item), item, ask);
}

function middleOf(session: Session, item: Item): Point {
  const body = bodyOfItem(session, item);
  if (body) return body.center;
  const line = lineOfItem(session, item);
  return line ? lerp(line.a, line.b, 0.5) : { x: 0, y: 0 };
}
