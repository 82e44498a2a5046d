import { describe, expect, it } from 'vitest';
import { sayWhere } from '#client/checks/sayWhere.ts';
import { buildScene } from '#model/scene/build.ts';
import { plainRoom } from '#tests/support/plainRoom.ts';
import { finding } from './finding.ts';

const shelf = (id: string, name: string, x: number) => ({
  id,
  name,
  kind: 'shelf' as const,
  x,
  y: 1000,
  width: 1200,
  depth: 320,
  levels: [{ id: `${id}l`, surface: 300 }],
});
const scene = buildScene(
  plainRoom({
    pieces: [
      shelf('pour', 'Pouring', 1000),
      shelf('read', 'Reading', 3000),
      shelf('far', 'Reading for older ones', 5000),
      shelf('s7', 'Shelf 7', 7000),
      { id: 't5', name: 'table 5', kind: 'table', x: 3000, y: 3000, width: 1200, depth: 600 },
      { id: 'round', name: 'Round one', kind: 'table', x: 5000, y: 3000, width: 1200, depth: 600 },
    ],
    materials: [{ id: 'm1', name: 'Word slips' }],
    placements: [{ material: 'm1', piece: 'read', side: 'front', level: 'readl', x: 50 }],
  }),
);
const where = (change: Parameters<typeof finding>[0]) => sayWhere(finding(change), scene);

describe('where a finding is', () => {
  it('names by the numbers of the plan what its words call by name, in their order', () => {
    const message = 'The way from hall to Reading is 0.70 m wide at its narrowest, between Pouring and table 5; 0.711 m is needed.';
    expect(where({ rule: 'way/width', subjects: ['read', 'hall'], message, at: { x: 1500, y: 1500 } })).toBe(
      'at B2: shelf 2 Reading, shelf 1 Pouring',
    );
  });

  it('says the number alone where one thing is named, of a table too', () => {
    expect(where({ rule: 'sight/hidden', subjects: ['pour'], message: '2.59 m² of floor behind Pouring cannot be seen.' })).toBe('shelf 1');
    expect(where({ rule: 'survey/outside', subjects: ['round'], message: 'Round one reaches through the wall.' })).toBe('table T1');
  });

  it('does not take a name for one within a longer one, nor within a word', () => {
    const message = 'The way from hall to Reading for older ones is too narrow; Pourings stand there.';
    expect(where({ rule: 'way/width', subjects: ['far'], message })).toBe('shelf 3');
  });

  it('says no number twice: what is called by its number has it in its name', () => {
    expect(where({ rule: 'way/narrow', subjects: ['s7', 't5'], message: 'It is 0.60 m wide between Shelf 7 and table 5.' })).toBe('');
  });

  it('says on which shelf the trays stand that a finding is about, where its words name none', () => {
    expect(
      where({ rule: 'order/strand', subjects: ['m1'], message: 'Put the cards with the rest of writing: botany stands between.' }),
    ).toBe('shelf 2');
  });

  it('says nothing of what is nowhere in particular', () => {
    expect(where({ rule: 'places/area', subjects: ['classroom'], message: '24 children need 55.20 m² of floor.' })).toBe('');
  });
});
