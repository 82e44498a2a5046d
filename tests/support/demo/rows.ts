import type { Row } from './fill.ts';

const row = (shelf: string, side: Row['side'], ids: string): Row => ({ shelf, side, ids: ids.trim().split(/\s+/) });

/** Which material stands where when all is in step: shelf sides in the order of the walk. */
export const rows: readonly Row[] = [
  row(
    'pl1',
    'front',
    `pl-carry-tray pl-spoon-grain pl-open-close pl-sponge
     pl-fold-cloths pl-pour-grain pl-tongs pl-pour-water
     pl-sew-card pl-dust-table`,
  ),
  row(
    'pl2',
    'front',
    `pl-frame-snap pl-frame-large-button pl-frame-small-button pl-frame-large-hook
     pl-frame-zip pl-frame-buckle pl-frame-small-hook pl-frame-lace-leather
     pl-frame-shoe-button pl-frame-lace-cloth pl-frame-cord pl-frame-bow`,
  ),
  row(
    'pl3',
    'front',
    `pl-polish-metal pl-polish-shoes pl-lay-table pl-wash-table pl-arrange-flowers pl-brush-teeth pl-prepare-food pl-wash-dishes`,
  ),
  row(
    'se1',
    'front',
    `se-cyl-diam se-cyl-all se-cyl-height
     se-cyl-inverse se-colour-1 se-colour-2 se-colour-3
     se-thermic-water se-thermic-bowls se-thermic-tablets`,
  ),
  row(
    'se2',
    'front',
    `se-tower se-broad-stair se-knobless
     se-long-stair se-binomial se-trinomial
     se-touch-board se-touch-strips se-sand-pairs se-sand-grade se-fabrics`,
  ),
  row(
    'se3',
    'front',
    `se-baric se-form-tray se-form-cabinet se-triangles
     se-form-cards-1 se-form-cards-2 se-form-cards-3 se-solids se-stereognostic
     se-mystery-bag se-sound-pair se-smell se-taste`,
  ),
  row(
    'ma1',
    'front',
    `ma-number-rods ma-sand-numerals
     ma-rods-cards ma-spindles ma-counters ma-memory ma-tens-frame
     ma-bead-stair ma-teens ma-tens ma-hundred-chain`,
  ),
  row(
    'ma2',
    'front',
    `ma-thousand-chain ma-decimal-beads ma-decimal-cards
     ma-bank ma-frame-small ma-stamp
     ma-add-strips ma-sub-strips ma-mult-board`,
  ),
  row(
    'la1',
    'front',
    `la-object-cards la-sound-game la-metal-insets
     la-designs la-sand-letters la-letter-groups
     la-writing-board la-alphabet-large la-alphabet-small`,
  ),
  row('la2', 'front', `la-object-words la-phonograms la-sight-words la-action-slips la-books`),
  row(
    'cu1',
    'front',
    `cu-globe-rough cu-globe-colour cu-land-water
     cu-plant-care cu-plant-puzzle cu-animal-puzzle
     cu-leaf-insets cu-leaf-cards cu-animal-cards`,
  ),
  row(
    'cu2',
    'front',
    `cu-sink-float cu-magnet cu-clock-calendar
     cu-cutting cu-clay cu-watercolour
     cu-drawing cu-music-board`,
  ),
];
