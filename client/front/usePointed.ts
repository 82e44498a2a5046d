import { useMemo } from 'react';
import type { Scene } from '#model/scene/types.ts';
import { pointedAt } from '../checks/pointOut.ts';
import { usePlanState } from '../plan/usePlanState.ts';
import { useRestingReport, useViewOf } from '../session/hooks.ts';

/** The trays that the shown finding points at, once that was asked for. */
export function usePointed(scene: Scene): ReadonlySet<string> {
  const report = useRestingReport();
  const { pointed } = usePlanState('pointed');
  const shown = useViewOf('finding');
  return useMemo(() => {
    const finding = pointed !== null && pointed === shown ? report?.findings.find(({ key }) => key === shown) : undefined;
    return new Set(finding ? pointedAt(finding, scene).trays : []);
  }, [report, pointed, shown, scene]);
}
