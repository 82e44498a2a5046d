import { createContext, type ReactNode } from 'react';
import type { Aside } from '../worker/messages.ts';
import type { Analyst } from './analyst.ts';
import type { Session } from './types.ts';

export type PageAnalyst = Analyst & { aside(): Aside };
export interface OpenedClassroom {
  readonly session: Session;
  readonly analyst: PageAnalyst;
}

export const SessionContext = createContext<OpenedClassroom | null>(null);

/** Hands one opened classroom down to everything on the sheet. */
export function SessionProvider({ opened, children }: { opened: OpenedClassroom; children: ReactNode }) {
  return <SessionContext value={opened}>{children}</SessionContext>;
}
