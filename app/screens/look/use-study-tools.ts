import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { StudyTools } from './study-tools.tsx';

export type ToolsState = StudyTools | 'loading' | 'missing';

/** The tools, or nothing as long as they are not there. */
export const loadedTools = (tools: ToolsState): StudyTools | null =>
  typeof tools === 'object' ? tools : null;

/** The tools once they are there; the study can be read without them. */
export function useStudyTools(): ReadonlySignal<ToolsState> {
  const state = useSignal<ToolsState>('loading');
  useEffect(() => {
    import('./study-tools.tsx').then(
      ({ studyTools }) => {
        state.value = studyTools;
      },
      () => {
        state.value = 'missing'; // no network, and the app is not kept whole yet
      },
    );
  }, [state]);
  return state;
}
