import { useMemo } from 'react';
import { measureSeats } from '#model/measures/seats.ts';
import { standsOnFloor } from '#model/measures/standsOnFloor.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import { leastWordIn, matCountIn } from '../plan/reportParts.ts';
import { useArrangement, useClassroom, useReportOf, useScene, useSession } from '../session/hooks.ts';
import { figure } from '../text/figure.ts';
import { sayCount } from '../text/sayCount.ts';
import { TextLink } from '../ui/TextLink.tsx';

/** What the list comes to: trays placed, seats, mats that fit, what is still on the table; and how to read the plan. */
export function ListFooter() {
  const session = useSession();
  const classroom = useClassroom();
  const arrangement = useArrangement();
  const mats = useReportOf(matCountIn);
  const least = useReportOf(leastWordIn);
  const { out, placed, floor } = useMemo(() => countTrays(classroom, arrangement), [classroom, arrangement]);
  const scene = useScene();
  const seats = useMemo(() => measureSeats(scene), [scene]);
  const { mat } = classroom.floorWork;
  const plain = (mm: number): string => figure(mm, classroom.display.units);
  return (
    <div className="list-footer">
      <dl className="list-counts">
        <div>
          <dt>Trays placed</dt>
          <dd>
            <b>{placed}</b> of {out}
          </dd>
        </div>
        <div>
          <dt>Tables</dt>
          <dd>
            <b>{seats.tables.length}</b> with {sayCount(seats.total, 'seat')}
          </dd>
        </div>
        <div>
          <dt>Mats that fit</dt>
          <dd>
            {least} <b>{mats ?? '–'}</b> of {plain(mat.depth)} × {plain(mat.width)}
          </dd>
        </div>
      </dl>
      <Legend />
      {out > placed ? (
        <p>
          <b>{sayCount(out - placed, 'tray')}</b> {out - placed === 1 ? 'is' : 'are'} still on the table.{' '}
          <TextLink onPress={() => session.setView({ sheet: 'materials' })}>
            Find {out - placed === 1 ? 'it' : 'them'} a place, sheet 2
          </TextLink>
        </p>
      ) : null}
      {floor > 0 && (
        <p className="aside">
          {sayCount(floor, 'thing')} of the class {floor === 1 ? 'stands' : 'stand'} on the floor, not on a board.
        </p>
      )}
    </div>
  );
}

/** Trays that are out and need a place, and how many of them have one; things that are out and stand on the floor, so that no board is theirs. */
export function countTrays(classroom: Classroom, arrangement: Arrangement): { out: number; placed: number; floor: number } {
  const places = new Set(arrangement.placements.map((p) => p.material));
  const trays = classroom.materials.filter((m) => m.state === 'out' && m.stands === 'own');
  const placed = trays.filter((m) => places.has(m.id)).length;
  const floor = trays.filter((m) => !places.has(m.id) && standsOnFloor(m)).length;
  return { out: trays.length - floor, placed, floor };
}

function Legend() {
  return (
    <ul className="list-legend">
      <li>
        <svg width="34" height="14" aria-hidden="true" focusable="false">
          <rect x="1" y="2" width="32" height="10" fill="var(--leaf)" stroke="var(--ink)" />
          <path d="M1 11.3H33" stroke="var(--ink)" strokeWidth="3.4" />
        </svg>
        open side
      </li>
      <li>
        <svg width="30" height="14" aria-hidden="true" focusable="false">
          <path d="M1 4.5H29" stroke="var(--ink)" strokeWidth="3.4" />
          <path d="M4 5V12M8 5V12M12 5V12" stroke="var(--ink)" strokeWidth="1.2" />
        </svg>
        a tick a board, where reading starts
      </li>
    </ul>
  );
}
