import { boards, type PieceInput, shelf, table } from './shell.ts';

const children = { depth: 400, levels: boards([680, 360, 40]) };

/** Shelves along the walls, clockwise from the hall door, and an open middle for mats. */
export function openMiddle(): PieceInput[] {
  return [
    shelf('pl1', 'Pouring', 5600, 6250, 90, 1800, children),
    shelf('pl2', 'Dressing', 4100, 7400, 180, 1600, children),
    shelf('pl3', 'House work', 2500, 7400, 180, 1600, children),
    shelf('cu2', 'Science and drawing', 1050, 7400, 180, 1300, children),
    shelf('se1', 'Size and colour', 200, 5300, -90, 1800, children),
    shelf('se2', 'Size and touch', 200, 3500, -90, 1800, children),
    shelf('se3', 'Form and sound', 200, 1800, -90, 1600, children),
    shelf('ma1', 'First numbers', 1650, 200, 0, 1700, children),
    shelf('ma2', 'Tens', 3300, 200, 0, 1600, children),
    shelf('la1', 'Letter sounds', 4950, 200, 0, 1700, children),
    shelf('la2', 'Reading', 8200, 900, 90, 1200, children),
    shelf('cu1', 'Land and living things', 8200, 2100, 90, 1200, children),
    table('t1', 6500, 300, 0, { front: 2 }, { width: 1100 }),
    table('t2', 6050, 2800, 0, { back: 2, left: 1 }),
    table('t3', 1870, 2100, 0, { front: 2, back: 2 }, { width: 1100, height: 530 }),
    table('t4', 3890, 2100, 0, { front: 2, back: 2 }, { width: 1100, height: 530 }),
    table('t5', 6050, 3400, 0, { front: 2, left: 1 }),
    { id: 'chair', kind: 'adult-seat', name: "adult's chair", x: 5300, y: 5000, width: 450, depth: 450, height: 450 },
    { id: 'mats', kind: 'mat-stand', name: 'mat stand', x: 210, y: 6420, width: 400, depth: 400, height: 600 },
  ];
}

/** The room as the team found it: shelves in the middle, a board too high, cupboards of the adults on the children's floor. */
export function asItStands(): PieceInput[] {
  const tall = { depth: 400, height: 1080, levels: boards([1040, 680, 360, 40]) };
  return [
    shelf('pl1', 'Pouring', 5600, 6250, 90, 1800, children),
    shelf('pl2', 'Dressing', 4100, 7400, 180, 1600, tall),
    shelf('pl3', 'House work', 2500, 7400, 180, 1600, children),
    shelf('cu2', 'Science and drawing', 1300, 5250, -90, 1300, { ...children, anchored: false }),
    shelf('se1', 'Size and colour', 200, 5300, -90, 1800, children),
    shelf('se2', 'Size and touch', 200, 3500, -90, 1800, children),
    shelf('se3', 'Form and sound', 200, 1800, -90, 1600, children),
    shelf('ma1', 'First numbers', 1650, 200, 0, 1700, children),
    shelf('ma2', 'Tens', 3300, 200, 0, 1600, children),
    shelf('la1', 'Letter sounds', 5300, 1900, 0, 1700, { ...children, anchored: null }),
    shelf('la2', 'Reading', 8230, 900, 90, 1200, children),
    shelf('cu1', 'Land and living things', 6900, 2700, 0, 1200, { ...children, anchored: null }),
    cupboard('store1', 'paper cupboard', 5350, 300, 0, 1900),
    cupboard('store2', 'cot cupboard', 1000, 7350, 180, 1400, 500),
    cupboard('store3', 'files', 7250, 300, 0, 1400),
    table('t1', 6900, 1500, 0, { front: 2 }),
    table('t2', 3100, 3900, 90, { front: 2, back: 2 }),
    table('t3', 2400, 2000, 0, { front: 2, back: 2 }, { height: 530 }),
    table('t4', 4700, 4400, 0, { front: 2 }, { height: 530 }),
    table('t5', 6500, 3900, 0, { front: 2 }),
    { id: 'chair', kind: 'adult-seat', name: "adult's chair", x: 5200, y: 5200, width: 450, depth: 450, height: 450 },
    { id: 'mats', kind: 'mat-stand', name: 'mat stand', x: 580, y: 6420, width: 400, depth: 400, height: 600 },
  ];
}

function cupboard(id: string, name: string, x: number, y: number, rotation: number, width: number, depth = 600): PieceInput {
  return { id, kind: 'shelf', name, x, y, rotation, width, depth, height: 1800, anchored: true, for: 'adults', closed: true };
}
