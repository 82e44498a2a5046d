import { useContext, useSyncExternalStore } from 'react';
import type { Report } from '#model/analysis/report.ts';
import type { NeedsRepair } from '#model/document/types.ts';
import type { Scene } from '#model/scene/types.ts';
import type { Arrangement, Classroom } from '#model/schema/types.ts';
import type { LengthUnits } from '#model/units/sayLength.ts';
import type { Aside } from '../worker/messages.ts';
import { type Announcement, announcer } from './announcer.ts';
import { type Conflict, conflictsOf } from './conflicts.ts';
import { mayChange } from './lookOnly.ts';
import { pacedArrangement, pacedKept, pacedReport } from './paced.ts';
import { restingOf } from './resting.ts';
import { type OpenedClassroom, type PageAnalyst, SessionContext } from './SessionProvider.tsx';
import type { Kept, Person, Session, View } from './types.ts';

/** @throws Error outside a SessionProvider: a mistake in the code. */
function useOpened(): OpenedClassroom {
  const opened = useContext(SessionContext);
  if (!opened) throw new Error('a sheet stands inside a SessionProvider');
  return opened;
}

export const useSession = (): Session => useOpened().session;

/** One thing of the session; draws again only when it is a new object. */
function useOf<T>(pick: (session: Session) => T): T {
  const session = useSession();
  return useSyncExternalStore(session.subscribe, () => pick(session));
}

// How things stand. While one is dragged these wait for it to be let go: only the drawing follows each frame.
export const useClassroom = (): Classroom => useOf((session) => restingOf(session).classroom());
export const useArrangement = (): Arrangement => useOf((session) => restingOf(session).arrangement());
export const useScene = (): Scene => useOf((session) => restingOf(session).scene());
/** What the checks said before the thing in hand was taken up: for what does not hang on where it is. */
export const useRestingReport = (): Report | null => useOf((session) => restingOf(session).report());

/** What the checks say now; while something is dragged in steps that can be read. */
export const useReport = (): Report | null => useOfReport((report) => report);
/** One figure of the report; draws again only when it reads differently. */
export const useReportOf = <T extends string | number | boolean | null>(pick: (report: Report | null) => T): T => useOfReport(pick);

/** How things stand, in the same steps: for figures that follow what is dragged. */
export function useFollowedArrangement(): Arrangement {
  const paced = pacedArrangement(useSession());
  return useSyncExternalStore(paced.subscribe, paced.value);
}

function useOfReport<T>(pick: (report: Report | null) => T): T {
  const paced = pacedReport(useSession());
  return useSyncExternalStore(paced.subscribe, () => pick(paced.value()));
}

/** One part of the view; the same object as long as that part stays. */
export const useViewOf = <K extends keyof View>(part: K): View[K] => useOf((session) => session.view()[part]);
export function useKept(): Kept {
  const paced = pacedKept(useSession());
  return useSyncExternalStore(paced.subscribe, paced.value);
}
export const usePeople = (): readonly Person[] => useOf((session) => session.people());
export const useNeedsRepair = (): readonly NeedsRepair[] => useOf((session) => session.needsRepair());
export const useUnits = (): LengthUnits => useOf((session) => session.classroom().display.units);
export const useConflicts = (): readonly Conflict[] => useOf((session) => conflictsOf(session).list());
/** False: this page may look and remark only. */
export const useMayChange = (): boolean => useOf(mayChange);
export const useCanTakeBack = (): boolean => useOf((session) => session.undo.canTakeBack());
export const useCanDoAgain = (): boolean => useOf((session) => session.undo.canDoAgain());

function useOfAnalyst<T>(pick: (analyst: PageAnalyst) => T): T {
  const { analyst } = useOpened();
  return useSyncExternalStore(analyst.subscribe, () => pick(analyst));
}

/** What went wrong with the checks, in words; null: nothing. */
export const useAnalyst = (): PageAnalyst => useOpened().analyst;
export const useCheckTrouble = (): string | null => useOfAnalyst((analyst) => analyst.trouble());
export const useIsThinking = (): boolean => useOfAnalyst((analyst) => analyst.isThinking());
export const useAside = (): Aside => useOfAnalyst((analyst) => analyst.aside());

export const useAnnouncement = (): Announcement => useSyncExternalStore(announcer.subscribe, announcer.latest);
