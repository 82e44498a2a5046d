import type { FloorWork } from '#model/schema/types.ts';
import { LengthField } from '../ui/LengthField.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import type { Part } from './part.ts';

export function FloorWorkPart({ classroom, change }: Part) {
  const { floorWork, display } = classroom;
  const set = (part: Partial<FloorWork>) => change({ floorWork: { ...floorWork, ...part } });
  return (
    <fieldset className="form-part">
      <legend>Mats on the floor</legend>
      <div className="form-row">
        <LengthField
          label="Mat, long side"
          value={floorWork.mat.width}
          units={display.units}
          least={100}
          most={10_000}
          onCommit={(width) => width !== null && set({ mat: { ...floorWork.mat, width } })}
        />
        <LengthField
          label="Mat, short side"
          value={floorWork.mat.depth}
          units={display.units}
          least={100}
          most={10_000}
          onCommit={(depth) => depth !== null && set({ mat: { ...floorWork.mat, depth } })}
        />
        <LengthField
          label="Floor between two mats"
          value={floorWork.gap}
          units={display.units}
          least={0}
          most={10_000}
          onCommit={(gap) => gap !== null && set({ gap })}
        />
        <NumberField
          label="Mats wanted at once"
          value={floorWork.wanted}
          least={0}
          most={1000}
          mayBeEmpty
          onCommit={(wanted) => set({ wanted })}
          echo={floorWork.wanted === null ? 'empty: one for each child without a seat' : null}
        />
      </div>
    </fieldset>
  );
}
