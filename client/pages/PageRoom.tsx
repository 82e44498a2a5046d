import { useMemo } from 'react';
import type { Outcome } from '#model/findings/finding.ts';
import type { PlainRoomChange } from '#model/rules/plainRoom.ts';
import { buildScene } from '#model/scene/build.ts';
import { RoomPicture } from '../plan/RoomPicture.tsx';
import { SeverityWord } from '../ui/SeverityMark.tsx';
import { ExampleFront } from './ExampleFront.tsx';
import type { JudgedRoom, PageAnswer, PageFailure } from './messages.ts';
import { sayExample } from './sayExample.ts';

interface Props {
  readonly rule: string;
  readonly change: PlainRoomChange;
  readonly answer: PageAnswer | PageFailure | null;
  readonly index: number;
}

/** One of a page's rooms: drawn, and what the check says of it. */
export function PageRoom({ rule, change, answer, index }: Props) {
  if (!answer) return <p className="waiting-words">The room is being drawn and judged …</p>;
  if ('failure' in answer) return <p>{answer.failure}</p>;
  const judged = answer.rooms[index];
  return judged ? <Drawn rule={rule} change={change} judged={judged} /> : null;
}

const heads: Readonly<Record<Outcome, string>> = {
  problem: 'The check finds a problem:',
  fine: 'The check finds it fine.',
  'cannot-tell': 'The check cannot tell:',
  'does-not-apply': 'The check does not apply here.',
};

function Drawn({ rule, change, judged }: { rule: string; change: PlainRoomChange; judged: JudgedRoom }) {
  const scene = useMemo(() => buildScene(judged.classroom), [judged]);
  const { report } = judged;
  const answer = report.answers[rule] ?? 'does-not-apply';
  const held = scene.sides.filter((side) => side.boards.some((board) => board.trays.length > 0));
  const facts = sayExample(scene, change);
  // Where the trays are what it is about, the fronts come first.
  const isOfFronts = held.length > 0 && /^(reach|order)\//.test(rule);
  const plan = <RoomPicture scene={scene} report={report} label={`Plan of the room. ${sayThings(scene)}`} />;
  const fronts = held.map((side) => (
    <ExampleFront key={`${side.piece.id}/${side.side}`} scene={scene} side={side} hasLines={rule.startsWith('reach/')} />
  ));
  return (
    <figure>
      {isOfFronts ? (
        <>
          {fronts}
          {plan}
        </>
      ) : (
        <>
          {plan}
          {fronts}
        </>
      )}
      <figcaption>
        {facts.map((fact) => (
          <p key={fact} className="aside">
            {fact}.
          </p>
        ))}
        <p className={`page-verdict ${answer}`}>{heads[answer]}</p>
        <ul className="page-found">
          {report.findings.map((finding) => (
            <li key={finding.key}>
              {finding.outcome === 'problem' && <SeverityWord severity={finding.severity} />} {finding.message}
            </li>
          ))}
        </ul>
      </figcaption>
    </figure>
  );
}

function sayThings({ bodies, room }: ReturnType<typeof buildScene>): string {
  const doors = room.openings.map(({ raw }) => `a ${raw.kind}`);
  const things = bodies.map((body) => body.label);
  return `In it: ${[...doors, ...things].join(', ') || 'nothing'}.`;
}
