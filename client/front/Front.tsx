import { useScene, useViewOf } from '../session/hooks.ts';
import { FrontOf } from './FrontOf.tsx';
import { shownSide } from './shownSide.ts';
import '../styles/front.css';

/** The front of the shelf last chosen, true to scale. */
export function Front() {
  const scene = useScene();
  const frontOf = useViewOf('frontOf');
  const side = shownSide(scene, frontOf);
  if (!side) {
    return (
      <section className="front" aria-labelledby="front-title">
        <h2 id="front-title">Shelf front</h2>
        <p className="front-empty aside">No shelf stands yet. Draw one on the plan, then its front comes here.</p>
      </section>
    );
  }
  return <FrontOf key={`${side.piece.id}/${side.side}`} scene={scene} side={side} />;
}
