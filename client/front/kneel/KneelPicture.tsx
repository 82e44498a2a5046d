import { useRef } from 'react';
import { type Eye, seesInto, type TrayLook } from '#model/measures/kneelView.ts';
import { inPlace } from '../../ui/inPlace.ts';
import { measureName } from '../measureText.ts';
import { nameWithin, wholeName } from '../nameLabels.ts';
import { useBoxSize } from '../useBoxSize.ts';
import {
  type DrawnTray,
  type Face,
  type KneelDrawing,
  levelWordsAt,
  markOn,
  type Opening,
  type PicturePoint,
  seenFace,
} from './kneelDrawing.ts';

/** mm beside the shelf, below its floor and above its highest thing */
const BESIDE = 70;
const BELOW = 30;
const ABOVE = 100;
/** px */
const NAME = 10.5;
const MOST_HIGH = 430;
const MARK = 4.2;
const LEVEL = 'eye level';

interface Props {
  readonly drawing: KneelDrawing;
  readonly eye: Eye;
  readonly looks: readonly TrayLook[];
  readonly chosen: string | null;
  readonly onChoose: (material: string) => void;
  /** The drawing in one sentence. */
  readonly label: string;
}

/** The shelf front from her eyes. Only what the openings let through is drawn of what stands in them. */
export function KneelPicture({ drawing, eye, looks, chosen, onChoose, label }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const { width } = useBoxSize(frame);
  const wide = drawing.width + 2 * BESIDE;
  const high = drawing.top + BELOW + ABOVE;
  const scale = Math.max(0.01, Math.min(width / wide, MOST_HIGH / high));
  const px = (length: number): number => length / scale;
  const names = looks.map(({ tray }) => tray.material.name);
  const stands = looks.flatMap((one) =>
    drawing.openings.flatMap((opening) => {
      const drawn = opening.trays.find(({ tray }) => tray === one.tray);
      return drawn ? [{ one, drawn, opening }] : [];
    }),
  );
  const words = { width: px(measureName(LEVEL) + 6), height: px(NAME + 4) };
  const wordsAt = levelWordsAt(drawing, eye, words, BESIDE);
  const picked = stands.find(({ one }) => one.tray.material.id === chosen);
  return (
    <div ref={frame} className="kneel-frame">
      {width > 0 && (
        <svg
          className="kneel-picture"
          role="img"
          aria-label={label}
          width={wide * scale}
          height={high * scale}
          viewBox={`${-BESIDE} ${-drawing.top - ABOVE} ${wide} ${high}`}
        >
          <Faces faces={drawing.behind} />
          {/* Behind what stands there, whose names it would strike through. */}
          <path className="kneel-level" d={`M${-BESIDE} ${-eye.height}H${drawing.width + BESIDE}`} />
          {drawing.openings.map((opening) => (
            <Through key={opening.key} {...{ opening, chosen, onChoose, scale, names }} top={drawing.top + ABOVE} />
          ))}
          <Faces faces={drawing.edges} />
          <path className="kneel-ground" d={`M${-BESIDE} 0H${drawing.width + BESIDE}`} />
          <text className="kneel-name" x={wordsAt + px(2)} y={-eye.height - px(4)} fontSize={px(NAME)}>
            {LEVEL}
          </text>
          {stands.map(({ one, drawn, opening }) => (
            <Spot
              key={one.tray.material.id}
              one={one}
              at={markOn(seenFace(drawn, opening), opening, px(MARK))}
              size={px(MARK)}
              isChosen={chosen === one.tray.material.id}
            />
          ))}
          {picked && <Whole {...{ picked, scale }} left={-BESIDE} right={drawing.width + BESIDE} top={drawing.top + ABOVE} />}
        </svg>
      )}
    </div>
  );
}

function Faces({ faces }: { faces: readonly Face[] }) {
  return inPlace(faces).map(({ place, entry: { of, points } }) => <path key={place} className={`kneel-face ${of}`} d={ring(points)} />);
}

const ring = (points: readonly PicturePoint[]): string => `M${points.map(({ x, z }) => `${x} ${-z}`).join('L')}Z`;

interface ThroughProps extends Pick<Props, 'chosen' | 'onChoose'> {
  readonly opening: Opening;
  readonly scale: number;
  readonly names: readonly string[];
  readonly top: number;
}

function Through({ opening, chosen, onChoose, scale, names, top }: ThroughProps) {
  const id = `kneel-${opening.key.replaceAll(/[^\w-]/g, '_')}`;
  const to = opening.to ?? top;
  // Above a shelf nothing closes the sides.
  const spread = opening.to === null ? 4000 : 0;
  return (
    <>
      <clipPath id={id}>
        <rect x={opening.left - spread} y={-to} width={opening.right - opening.left + 2 * spread} height={Math.max(0, to - opening.from)} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <Faces faces={opening.inside} />
        {opening.trays.map((drawn) => (
          <Tray key={drawn.tray.material.id} {...{ drawn, scale, names, onChoose, opening }} isChosen={chosen === drawn.tray.material.id} />
        ))}
      </g>
    </>
  );
}

interface TrayProps {
  readonly opening: Opening;
  readonly drawn: DrawnTray;
  readonly isChosen: boolean;
  readonly scale: number;
  /** Of all things on this side. */
  readonly names: readonly string[];
  readonly onChoose: (material: string) => void;
}

function Tray({ drawn, isChosen, scale, names, onChoose, opening }: TrayProps) {
  const { material } = drawn.tray;
  const said = isChosen ? null : nameOn(drawn, opening, names, scale);
  const line = (NAME * 1.12) / scale;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the list beside it is the accessible twin
    <g className={`kneel-tray${isChosen ? ' chosen' : ''}${drawn.isMeasured ? '' : ' unmeasured'}`} onClick={() => onChoose(material.id)}>
      <Faces faces={drawn.faces} />
      {said?.lines.map((text, i) => (
        <text
          key={text}
          className="kneel-name"
          x={said.x}
          y={-said.z + (i - (said.lines.length - 1) / 2) * line + NAME / scale / 3}
          fontSize={NAME / scale}
          textAnchor="middle"
        >
          {text}
        </text>
      ))}
    </g>
  );
}

/** Its name on its face right of the mark, else on its top; what of them is behind the edges of boards has no room for words. */
function nameOn(drawn: DrawnTray, opening: Opening, names: readonly string[], scale: number) {
  const mark = (MARK * 3.2) / scale;
  for (const which of ['front', 'top'] as const) {
    const face = seenFace(drawn, opening, which);
    const room = which === 'front' ? { ...face, x: face.x + mark, width: face.width - mark } : face;
    const fits = Math.min(3, Math.floor((room.height * scale) / (NAME * 1.12)));
    const lines = nameWithin(drawn.tray.material.name, names, room.width * scale - 4, fits, measureName);
    if (lines) return { lines, x: room.x + room.width / 2, z: room.z + room.height / 2 };
  }
  return null;
}

interface WholeProps {
  readonly picked: { readonly one: TrayLook; readonly drawn: DrawnTray; readonly opening: Opening };
  readonly scale: number;
  /** mm of the picture */
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

/** px: the chosen thing's name is no wider than this */
const WHOLE = 190;

/** The chosen thing's name in full, above it or, where the picture ends, below. */
function Whole({ picked: { one, drawn, opening }, scale, left, right, top }: WholeProps) {
  const face = seenFace(drawn, opening);
  const { lines, width } = wholeName(one.tray.material.name, WHOLE, measureName);
  const [wide, high, line] = [(width * 1.08 + 10) / scale, (lines.length * NAME * 1.15 + 5) / scale, (NAME * 1.15) / scale];
  const x = Math.min(Math.max(face.x + face.width / 2 - wide / 2, left), right - wide);
  const above = face.z + face.height + 6 / scale;
  const z = above + high <= top ? above : face.z - high - 6 / scale;
  return (
    <g className="kneel-whole">
      <rect x={x} y={-z - high} width={wide} height={high} />
      {lines.map((text, i) => (
        <text key={text} x={x + wide / 2} y={-z - high + (i + 0.9) * line} fontSize={NAME / scale} textAnchor="middle">
          {text}
        </text>
      ))}
    </g>
  );
}

/** Whether she sees into it: filled when she does, half when it is too flat or she sees only its front, an open dashed ring when it is hidden. */
export function Spot({
  one,
  at,
  size,
  isChosen,
}: {
  one: Pick<TrayLook, 'look' | 'topOverEye'>;
  at: PicturePoint;
  size: number;
  isChosen: boolean;
}) {
  const kind = seesInto(one)
    ? 'seen'
    : one.look === 'seen' || one.look === 'too flat'
      ? 'flat'
      : one.look === 'not known'
        ? 'unknown'
        : 'hidden';
  return (
    <g className={`kneel-spot ${kind}${isChosen ? ' chosen' : ''}`} transform={`translate(${at.x} ${-at.z})`}>
      {isChosen && <circle className="kneel-ring" r={size * 2} />}
      <circle r={size} />
      {kind === 'flat' && <path d={`M${-size} 0A${size} ${size} 0 0 0 ${size} 0Z`} />}
    </g>
  );
}
