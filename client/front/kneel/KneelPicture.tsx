import { useRef } from 'react';
import type { Eye, TrayLook } from '#model/measures/kneelView.ts';
import { sayStep } from '../frontLayout.ts';
import { measureName } from '../measureText.ts';
import { useBoxSize } from '../useBoxSize.ts';
import { wrapName } from '../wrapName.ts';
import { type DrawnTray, type Face, type KneelDrawing, type Opening, type PicturePoint, spotInPicture } from './kneelDrawing.ts';

/** mm beside the shelf, below its floor and above its highest thing */
const BESIDE = 70;
const BELOW = 30;
const ABOVE = 100;
/** px */
const NAME = 10.5;
const MOST_HIGH = 430;

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
          {drawing.openings.map((opening) => (
            <Through key={opening.key} {...{ opening, chosen, onChoose, scale }} top={drawing.top + ABOVE} />
          ))}
          <Faces faces={drawing.edges} />
          <path className="kneel-ground" d={`M${-BESIDE} 0H${drawing.width + BESIDE}`} />
          <path className="kneel-level" d={`M${-BESIDE} ${-eye.height}H${drawing.width + BESIDE}`} />
          <text className="kneel-words" x={-BESIDE + px(2)} y={-eye.height - px(4)} fontSize={px(NAME)}>
            eye level
          </text>
          {looks.map((one) => {
            const at = spotInPicture(eye, one);
            return at && <Spot key={one.tray.material.id} one={one} at={at} size={px(4.2)} isChosen={chosen === one.tray.material.id} />;
          })}
        </svg>
      )}
    </div>
  );
}

function Faces({ faces }: { faces: readonly Face[] }) {
  return faces.map(({ of, points }, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: faces are drawn one after the other, whatever they are
    <path key={i} className={`kneel-face ${of}`} d={ring(points)} />
  ));
}

const ring = (points: readonly PicturePoint[]): string => `M${points.map(({ x, z }) => `${x} ${-z}`).join('L')}Z`;

interface ThroughProps extends Pick<Props, 'chosen' | 'onChoose'> {
  readonly opening: Opening;
  readonly scale: number;
  readonly top: number;
}

function Through({ opening, chosen, onChoose, scale, top }: ThroughProps) {
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
          <Tray key={drawn.tray.material.id} {...{ drawn, scale, onChoose, opening }} isChosen={chosen === drawn.tray.material.id} />
        ))}
      </g>
    </>
  );
}

/** px: a name cut off is still told from others on a face as wide as this */
const CUT_FROM = 84;

interface TrayProps {
  readonly opening: Opening;
  readonly drawn: DrawnTray;
  readonly isChosen: boolean;
  readonly scale: number;
  readonly onChoose: (material: string) => void;
}

function Tray({ drawn, isChosen, scale, onChoose, opening }: TrayProps) {
  const { material } = drawn.tray;
  const { x, width } = drawn.front;
  // What of its face is not behind the edges of boards has room for words.
  const z = Math.max(drawn.front.z, opening.from);
  const height = Math.min(drawn.front.z + drawn.front.height, opening.to ?? Infinity) - z;
  const [wide, high] = [width * scale, height * scale];
  const lines = wrapName(material.name, wide - 4, measureName, Math.max(1, Math.floor(high / (NAME * 1.15))));
  const isReadable = high >= NAME && (wide >= CUT_FROM || !lines.some((line) => line.endsWith('…')));
  const said = isReadable ? lines : high >= NAME ? [sayStep(material.step)] : [];
  const line = (NAME * 1.12) / scale;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the list beside it is the accessible twin
    <g className={`kneel-tray${isChosen ? ' chosen' : ''}${drawn.isMeasured ? '' : ' unmeasured'}`} onClick={() => onChoose(material.id)}>
      <Faces faces={drawn.faces} />
      {said.map((text, i) => (
        <text
          key={text}
          className="kneel-name"
          x={x + width / 2}
          y={-(z + height / 2) + (i - (said.length - 1) / 2) * line + NAME / scale / 3}
          fontSize={NAME / scale}
          textAnchor="middle"
        >
          {text}
        </text>
      ))}
    </g>
  );
}

/** Where her hand would go: filled when she sees it, half when it is too flat, an open dashed ring when it is hidden. */
export function Spot({ one, at, size, isChosen }: { one: Pick<TrayLook, 'look'>; at: PicturePoint; size: number; isChosen: boolean }) {
  const kind = one.look === 'seen' ? 'seen' : one.look === 'too flat' ? 'flat' : one.look === 'not known' ? 'unknown' : 'hidden';
  return (
    <g className={`kneel-spot ${kind}${isChosen ? ' chosen' : ''}`} transform={`translate(${at.x} ${-at.z})`}>
      {isChosen && <circle className="kneel-ring" r={size * 2} />}
      <circle r={size} />
      {kind === 'flat' && <path d={`M${-size} 0A${size} ${size} 0 0 0 ${size} 0Z`} />}
    </g>
  );
}
