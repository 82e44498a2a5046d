import { blocked } from './exit/blocked.ts';
import { doors } from './exit/doors.ts';
import { far } from './exit/far.ts';
import { swing as exitSwing } from './exit/swing.ts';
import { half } from './floor/half.ts';
import { mats } from './floor/mats.ts';
import { contrast } from './order/contrast.ts';
import { crowded } from './order/crowded.ts';
import { gap } from './order/gap.ts';
import { sequence } from './order/sequence.ts';
import { strand } from './order/strand.ts';
import { adults } from './places/adults.ts';
import { area } from './places/area.ts';
import { fixtures } from './places/fixtures.ts';
import { occupants } from './places/occupants.ts';
import { work } from './places/work.ts';
import { advisory } from './reach/advisory.ts';
import { carry } from './reach/carry.ts';
import { seat } from './reach/seat.ts';
import { see } from './reach/see.ts';
import { take } from './reach/take.ts';
import { twoHands } from './reach/two-hands.ts';
import type { Rule } from './rule.ts';
import { hidden } from './sight/hidden.ts';
import { pocket } from './sight/pocket.ts';
import { overlap } from './steady/overlap.ts';
import { small } from './steady/small.ts';
import { tip } from './steady/tip.ts';
import { closure } from './survey/closure.ts';
import { outside } from './survey/outside.ts';
import { turned } from './survey/turned.ts';
import { door } from './way/door.ts';
import { manoeuvre } from './way/manoeuvre.ts';
import { narrow } from './way/narrow.ts';
import { standing } from './way/standing.ts';
import { swing } from './way/swing.ts';
import { turn } from './way/turn.ts';
import { width } from './way/width.ts';

/** Every rule, in the order of the nine questions. One line a rule. */
export const rules: readonly Rule[] = [
  width,
  narrow,
  door,
  swing,
  turn,
  standing,
  manoeuvre,
  take,
  see,
  twoHands,
  carry,
  advisory,
  seat,
  sequence,
  gap,
  strand,
  crowded,
  contrast,
  mats,
  half,
  area,
  work,
  adults,
  fixtures,
  occupants,
  hidden,
  pocket,
  blocked,
  far,
  doors,
  exitSwing,
  overlap,
  tip,
  small,
  outside,
  closure,
  turned,
];
