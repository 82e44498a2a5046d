import { useCallback, useId, useMemo, useState } from 'react';
import { add, lerp, scale } from '#model/geometry/vec.ts';
import { freeFloorBefore, obstaclesOf } from '#model/measures/frontFloor.ts';
import { type Eye, lookAtSide, lookRulesOf } from '#model/measures/kneelView.ts';
import { measureReach } from '#model/measures/reach.ts';
import { standOffAt } from '#model/measures/reachCurves.ts';
import type { Scene, SceneSide } from '#model/scene/types.ts';
import { sayYearsAndMonths } from '#model/units/sayAge.ts';
import { sayLength } from '#model/units/sayLength.ts';
import { at, fill, line, type Pen, stroke, write } from '../../plan/draw/pen.ts';
import { RoomPicture } from '../../plan/RoomPicture.tsx';
import { useUnits } from '../../session/hooks.ts';
import { colours } from '../../styles/tokens.ts';
import { sayEyes, sayPicture } from '../../text/sayKneel.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { sideName } from '../shelfNames.ts';
import { type ChildEye, childEyes } from './childEyes.ts';
import { KneelList } from './KneelList.tsx';
import { KneelPicture, Spot } from './KneelPicture.tsx';
import { kneelDrawing } from './kneelDrawing.ts';
import '../../styles/kneel.css';
import { capital } from '../../text/sayList.ts';

interface Props {
  readonly scene: Scene;
  readonly side: SceneSide;
  /** The material looked at first; null: she stands before the middle. */
  readonly material?: string | null;
  readonly onClose: () => void;
}

/** What a child sees of a shelf front from where she stands. */
export function KneelDialog({ scene, side, material = null, onClose }: Props) {
  const reach = useMemo(() => measureReach(scene), [scene]);
  const eyes = useMemo(() => childEyes(scene, reach), [scene, reach]);
  const title = `Kneel here: ${sideName(scene, side)}`;
  return (
    <Dialog title={title} isOpen onClose={onClose} isWide>
      {eyes.length === 0 ? (
        <p>Where her eyes are is not known: {reach.missing.join('; ') || 'give the ages of the children'}.</p>
      ) : (
        <Look {...{ scene, side, eyes, material }} />
      )}
      <div className="verbs">
        <Button kind="strong" onPress={onClose}>
          Stand up
        </Button>
      </div>
    </Dialog>
  );
}

/** mm before the front: where a child stands who looks a shelf over, or as far as the room lets her */
const USUAL = 900;

function Look({
  scene,
  side,
  eyes,
  material,
}: Omit<Props, 'onClose' | 'material'> & { eyes: readonly ChildEye[]; material: string | null }) {
  const units = useUnits();
  const reach = useMemo(() => measureReach(scene), [scene]);
  const [whose, setWhose] = useState(eyes[0]?.id ?? '');
  const [chosen, setChosen] = useState<string | null>(material);
  const middleOf = (id: string | null): number | null => {
    const found = side.boards.flatMap((board) => board.trays.map((tray) => ({ board, tray }))).find(({ tray }) => tray.material.id === id);
    return found ? (side.width - found.board.width) / 2 + found.tray.placement.x + (found.tray.width ?? 0) / 2 : null;
  };
  const [along, setAlong] = useState(() => middleOf(material) ?? side.width / 2);
  const [wanted, setWanted] = useState(USUAL);
  const rules = lookRulesOf(scene.classroom);
  const child = (eyes.find(({ id }) => id === whose) ?? eyes[0])?.child;
  const floorAt = useMemo(() => freeFloorBefore(scene, obstaclesOf(scene), side, rules.stepBack), [scene, side, rules.stepBack]);
  const nearest = child ? standOffAt(child, side.piece.toeRecess) : 0;
  const farthest = Math.max(nearest, scene.room.isSound ? floorAt(along) : rules.stepBack);
  const distance = Math.min(farthest, Math.max(nearest, wanted));
  const stand = useCallback((pen: Pen) => drawStanding(pen, side, along, distance), [side, along, distance]);
  if (!child) return null;

  const eye: Eye = { along, distance, height: child.eye };
  const looks = lookAtSide(reach, side, child, distance, rules);
  const words = sayPicture(looks, distance, units);
  const hasRoom = farthest > nearest + 1;
  const choose = (id: string): void => {
    setChosen(id);
    setAlong(middleOf(id) ?? along);
  };

  return (
    <div className="kneel">
      <div className="kneel-main">
        <KneelPicture
          drawing={kneelDrawing(side, eye)}
          {...{ eye, looks, chosen }}
          onChoose={choose}
          label={`The shelf from her eyes. ${words}`}
        />
        <p className="kneel-key aside" aria-hidden="true">
          <Key look="seen" text="she sees into it" />
          <Key look="too flat" text="too flat, or as high as her eyes" />
          <Key look="board above" text="she does not see it" />
        </p>
        <div className="kneel-controls">
          <Slide label="How far before the shelf" value={distance} least={nearest} most={farthest} onChange={setWanted} isOff={!hasRoom} />
          <Slide label="How far along it, from its left end" value={along} least={0} most={side.width} onChange={setAlong} />
          <Select
            label="Whose eyes"
            value={whose}
            options={eyes.map(({ id, name, child: { months } }) => ({ value: id, text: `${name}, ${sayYearsAndMonths(months)}` }))}
            onChange={setWhose}
          />
        </div>
        <p className="aside">
          {sayEyes(child, units)} She stands from {sayLength(Math.round(nearest), units)} to {sayLength(Math.round(farthest), units)} before
          it
          {hasRoom ? ', where the free floor ends.' : ': there is no more free floor.'} Each thing is judged from straight before it.
          {!side.isForChildren && ' This shelf is not for children, so the check does not ask.'}
        </p>
        <div className="kneel-where">
          <h3>Where she stands</h3>
          <RoomPicture
            scene={scene}
            over={stand}
            label={`Plan of the room; she stands ${sayLength(Math.round(distance), units)} before ${sideName(scene, side)}.`}
          />
        </div>
      </div>
      <div className="kneel-side">
        <h3>{capital(sideName(scene, side))} in words</h3>
        <p role="status">{words}</p>
        <KneelList side={side} looks={looks} months={child.months} chosen={chosen} onChoose={choose} />
      </div>
    </div>
  );
}

const looksOfKey = { seen: 'seen', 'too flat': 'too flat', 'board above': 'board above' } as const;

function Key({ look, text }: { look: keyof typeof looksOfKey; text: string }) {
  return (
    <span>
      <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true" focusable="false">
        <Spot one={{ look, topOverEye: null }} at={{ x: 0, z: 0 }} size={4.2} isChosen={false} />
      </svg>{' '}
      {text}
    </span>
  );
}

interface SlideProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
  readonly isOff?: boolean;
}

/** mm a key slides */
const STEP = 50;

function Slide({ label, value, least, most, onChange, isOff = false }: SlideProps) {
  const units = useUnits();
  const id = useId();
  const said = sayLength(Math.round(value / 10) * 10, units);
  return (
    <div className="field">
      <label htmlFor={id}>
        {label}: <b>{said}</b>
      </label>
      <input
        id={id}
        type="range"
        min={0}
        // One step more than whole ones, so that the far end is reached.
        max={Math.ceil((most - least) / STEP)}
        step={1}
        value={Math.round((value - least) / STEP)}
        aria-valuetext={said}
        disabled={isOff}
        onChange={(event) => onChange(Math.min(most, least + Number(event.target.value) * STEP))}
      />
    </div>
  );
}

/** px that the words beside her take */
const WORDS = 110;

/** Her on the plan: where she stands, and the line to the shelf. */
function drawStanding(pen: Pen, side: SceneSide, along: number, distance: number): void {
  const { a, b, outward } = side.edge;
  const front = lerp(a, b, side.width === 0 ? 0.5 : along / side.width);
  const she = at(pen, add(front, scale(outward, distance)));
  line(pen, at(pen, a), at(pen, b), { colour: colours.blue, width: 3.4 });
  line(pen, at(pen, front), she, { colour: colours.blue, width: 1, dash: [2, 3] });
  pen.ctx.beginPath();
  pen.ctx.arc(she.x, she.y, 6, 0, 2 * Math.PI);
  fill(pen, colours.leaf);
  stroke(pen, { colour: colours.blue, width: 2.2 });
  pen.ctx.beginPath();
  pen.ctx.arc(she.x, she.y, 2, 0, 2 * Math.PI);
  fill(pen, colours.blue);
  // Towards the side where there is paper left.
  const isRight = she.x + WORDS < pen.ctx.canvas.clientWidth;
  const where = { x: she.x + (isRight ? 10 : -10), y: she.y + 14 };
  const words = { size: 10.5, weight: 650, colour: colours.blue, ground: colours.leaf } as const;
  write(pen, 'she stands here', where, { ...words, align: isRight ? 'left' : 'right' });
}
