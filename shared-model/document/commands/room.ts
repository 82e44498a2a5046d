import * as Y from 'yjs';
import { corner as cornerSchema, fixture as fixtureSchema, opening as openingSchema, room as roomSchema } from '../../schema/room.ts';
import { mapAt, writeById, writeEntry, writeList } from '../encode.ts';
import { layout, roomShape } from '../layout.ts';
import type { Plain } from '../plain.ts';
import { cornersOf, rootOf, settingsOf, type YMap } from '../roots.ts';
import type { Commands } from '../types.ts';
import { type Context, freeId, part, removeFrom, setFields, setTogether, thing, whole } from './context.ts';

type RoomCommands = Pick<
  Commands,
  | 'setCorners'
  | 'moveCorner'
  | 'addOpening'
  | 'changeOpening'
  | 'removeOpening'
  | 'addFixture'
  | 'changeFixture'
  | 'removeFixture'
  | 'setZones'
  | 'changeRoom'
>;

const cornersSchema = roomSchema.shape.corners;
const zonesSchema = roomSchema.shape.zones;

export function roomCommands(context: Context): RoomCommands {
  const { doc, step } = context;
  return {
    setCorners(corners) {
      const checked = whole(cornersSchema, corners, 'corners') as unknown[];
      step(() => writeList(cornersOf(doc), layout.corners, checked));
      return true;
    },
    moveCorner(corner, to) {
      const target = [...cornersOf(doc)].find((entry): entry is YMap => entry instanceof Y.Map && entry.get('id') === corner);
      if (!target) return false;
      const set = part(cornerSchema, { x: to.x, y: to.y }, corner);
      step(() => setTogether(target, set));
      return true;
    },
    addOpening(opening) {
      const id = freeId(context, rootOf(doc, 'openings'), opening.id, opening.kind);
      const made = whole(openingSchema, { ...opening, id }, 'opening');
      step(() => writeEntry(rootOf(doc, 'openings'), layout.openings, id, made));
      return id;
    },
    changeOpening(opening, set) {
      const target = thing(rootOf(doc, 'openings'), opening);
      if (!target) return false;
      const { id: _, ...checked } = part(openingSchema, set, opening);
      step(() => setFields(target, layout.openings.entry, checked));
      return true;
    },
    removeOpening: (opening) => removeFrom(context, rootOf(doc, 'openings'), opening),
    addFixture(fixture) {
      const id = freeId(context, rootOf(doc, 'fixtures'), fixture.id, fixture.kind);
      const made = whole(fixtureSchema, { ...fixture, id }, 'fixture');
      step(() => writeEntry(rootOf(doc, 'fixtures'), layout.fixtures, id, made));
      return id;
    },
    changeFixture(fixture, set) {
      const target = thing(rootOf(doc, 'fixtures'), fixture);
      if (!target) return false;
      const { id: _, ...checked } = part(fixtureSchema, set, fixture);
      step(() => setFields(target, layout.fixtures.entry, checked));
      return true;
    },
    removeFixture: (fixture) => removeFrom(context, rootOf(doc, 'fixtures'), fixture),
    setZones(zones) {
      const checked = whole(zonesSchema, zones, 'zones') as unknown[];
      step(() => writeById(rootOf(doc, 'zones'), layout.zones, checked));
      return true;
    },
    changeRoom(set) {
      const { survey, ...own } = part(roomSchema, set, 'room') as Plain & { survey?: { walls: unknown[]; diagonals: unknown[] } | null };
      step(() => {
        const room = mapAt(settingsOf(doc), 'room');
        setFields(room, roomShape, own);
        if (survey === undefined) return;
        const { walls = [], diagonals = [], ...surveyOwn } = survey ?? {};
        setFields(room, roomShape, { survey: survey === null ? null : surveyOwn });
        writeById(rootOf(doc, 'surveyWalls'), layout.surveyWalls, walls);
        writeById(rootOf(doc, 'surveyDiagonals'), layout.surveyDiagonals, diagonals);
      });
      return true;
    },
  };
}
