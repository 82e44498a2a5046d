import { sayChild } from '#model/findings/sayChild.ts';
import type { ChildModel } from '#model/measures/childModel.ts';
import { seesInto, type TrayLook } from '#model/measures/kneelView.ts';
import { type LengthUnits, sayLength } from '#model/units/sayLength.ts';
import { capital } from './sayList.ts';

/** mm: distances are said to the nearest 10 */
const near = (mm: number, units: LengthUnits): string => sayLength(Math.round(mm / 10) * 10, units);

/** Short, for the list: how one tray looks from where she stands. */
export function sayLook(one: TrayLook, units: LengthUnits): string {
  const { from, topOverEye } = one;
  const sees = topOverEye === null ? 'she sees into it' : 'she sees its front';
  const onlyFront =
    topOverEye === null ? null : `she sees its front, not into it: its top, at ${near(topOverEye, units)}, is above her eyes`;
  switch (one.look) {
    case 'seen':
      return one.before ? `seen over the boards, but ${one.before.material.name} stands before it` : (onlyFront ?? sees);
    case 'board above':
      return `hidden by the board above${from ? `; she sees it from ${near(from.nearest, units)} back` : ', however far back she steps'}`;
    case 'too flat':
      return (
        onlyFront ??
        `too flat: she looks across it${from ? `; she sees into it from ${near(from.farthest, units)} or nearer` : ', however near she comes'}`
      );
    case 'above the eye':
      return 'stands above her eyes';
    case 'no floor':
      return `she cannot stand so far back: ${near(one.floor, units)} of floor is free before it${from ? `; ${sees} from ${near(from.nearest, units)} to ${near(from.farthest, units)}` : ''}`;
    case 'too near':
      return 'nearer than she can stand';
    case 'not known':
      return one.spot ? 'not known: give it its width and depth' : 'not known: give the shelf its height';
  }
}

/** Whose eyes these are, and how high. */
export function sayEyes(child: ChildModel, units: LengthUnits): string {
  const high = sayLength(Math.round(child.eye), units);
  if (child.isMeasured) return `The smallest child as measured, ${near(child.stature, units)} tall: her eyes are at ${high}.`;
  return `${capital(sayChild(child))}: her eyes are at ${high}.`;
}

/** All of it in one sentence, for those who hear the drawing. */
export function sayPicture(looks: readonly TrayLook[], distance: number, units: LengthUnits): string {
  const seen = looks.filter(seesInto).length;
  return `From ${near(distance, units)} before the shelf she sees into ${seen} of ${looks.length} ${looks.length === 1 ? 'thing' : 'things'}.`;
}
