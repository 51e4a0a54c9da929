import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Easel } from '../../state/easel.ts';
import type { EaselSenses } from '../../state/easel-senses.ts';
import type { Keepsakes } from '../../state/keepsakes.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';
import { linkTo } from '../../state/route.ts';
import { TopBar } from '../common/top-bar.tsx';
import { Standstill } from '../common/waiting.tsx';
import { EaselActions } from './easel-actions.tsx';
import { EaselFrame } from './easel-frame.tsx';
import { EaselPanel } from './easel-panel.tsx';
import { EaselPicture } from './easel-picture.tsx';
import { EaselTop } from './easel-top.tsx';
import { EaselViews } from './easel-views.tsx';
import { MorePanels } from './more-panels.tsx';
import { MoreSheet } from './more-sheet.tsx';
import { PressPlace } from './press-place.ts';
import { useEaselKeys } from './use-easel-keys.ts';
import { useEaselView } from './use-easel-view.ts';
import { usePressPlace } from './use-press-place.ts';

interface EaselScreenProps {
  easel: Easel;
  senses: EaselSenses;
  calls: PaintCalls & PictureCalls;
  keepsakes: Keepsakes;
  paintingId: string;
}

/** One step at a time, readable at arm's length: the picture, the sentence, the puddles, the clock. */
export function EaselScreen({ easel, senses, calls, keepsakes, paintingId }: EaselScreenProps) {
  const view = useEaselView(easel, calls);
  const more = useSignal(false);
  const { place, hint } = usePressPlace();
  useEaselKeys(easel, view, senses.settings.value.letterKeys);
  useEffect(() => {
    void easel.open(paintingId);
    return easel.leave;
  }, [easel, paintingId]);
  useEffect(() => senses.listen(), [senses]);
  useEffect(() => {
    const leaving = new AbortController();
    for (const kind of ['pointerup', 'keydown'] as const)
      window.addEventListener(kind, senses.touched, { signal: leaving.signal, capture: true });
    return () => leaving.abort();
  }, [senses]);

  const step = easel.step.value;
  const desk = easel.desk.value;
  const { hand } = senses.settings.value;
  if (!desk || !step)
    return (
      <EaselFrame
        hand={hand}
        top={<TopBar title="Easel" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />}
        picture={<Standstill problem={easel.problem.value} onAgain={easel.again} />}
        panel={null}
        views={null}
        actions={null}
      />
    );
  const steps = desk.plan.steps.length;
  return (
    <PressPlace.Provider value={place}>
      <EaselFrame
        hand={hand}
        top={<EaselTop easel={easel} paintingId={paintingId} step={step} steps={steps} />}
        picture={<EaselPicture desk={desk} title={step.title} view={view} />}
        panel={<EaselPanel {...{ easel, senses, calls, desk, step, view }} />}
        views={<EaselViews view={view} step={step} />}
        actions={
          <EaselActions
            easel={easel}
            paintingId={paintingId}
            hint={hint.value}
            onMore={() => {
              more.value = true;
            }}
          />
        }
      />
      {more.value && (
        <MoreSheet
          onClose={() => {
            more.value = false;
          }}
        >
          <MorePanels easel={easel} senses={senses} keepsakes={keepsakes} />
        </MoreSheet>
      )}
    </PressPlace.Provider>
  );
}
