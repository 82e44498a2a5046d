import { boards, type PieceInput, shelf, table } from './shell.ts';

const children = { depth: 400, levels: boards([680, 360, 40]) };

/** Shelves along the walls, clockwise from the hall door, and an open middle for mats. */
export function openMiddle(): PieceInput[] {
  return [
    shelf('pl1', 'Pouring', 5600, 6250, 90, 1800, children),
    shelf('pl2', 'Dressing', 3900, 7400, 180, 1600, children),
    shelf('pl3', 'House work', 2300, 7400, 180, 1600, children),
    shelf('se1', 'Size and colour', 200, 5300, -90, 1800, children),
    shelf('se2', 'Size and touch', 200, 3500, -90, 1800, children),
    shelf('se3', 'Form and sound', 200, 1800, -90, 1600, children),
    shelf('ma1', 'First numbers', 2050, 200, 0, 1700, children),
    shelf('ma2', 'Tens', 3700, 200, 0, 1600, children),
    shelf('la1', 'Letter sounds', 5350, 200, 0, 1700, children),
    shelf('la2', 'Reading', 8200, 1000, 90, 1200, children),
    shelf('cu1', 'Land and living things', 8200, 2250, 90, 1200, children),
    shelf('cu2', 'Science and drawing', 6000, 3400, 0, 1300, { ...children, depth: 800, sides: ['front', 'back'], divider: true }),
    table('t1', 6900, 1500, 0, { front: 2, back: 2 }),
    table('t2', 5000, 1700, 90, { front: 2, back: 2 }),
    table('t3', 6600, 2500, 0, { front: 2, back: 2 }, { height: 530 }),
    table('t4', 4400, 4600, 0, { front: 2 }, { height: 530 }),
    table('t5', 6900, 4300, 0, { back: 2 }),
    { id: 'chair', kind: 'adult-seat', name: "adult's chair", x: 1100, y: 6900, width: 500, depth: 500, height: 450 },
    { id: 'mats', kind: 'mat-stand', name: 'mat stand', x: 300, y: 6650, width: 400, depth: 400, height: 600 },
  ];
}
