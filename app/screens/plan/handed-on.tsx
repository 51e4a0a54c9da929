import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { tickedPaints } from '../../core/paint/own-box.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { joinWithOr } from '../../core/words/numbers.ts';
import { standInInWords } from '../../core/words/palette/stand-ins.ts';
import {
  createHandedPlan,
  type HandedNeeds,
  type HandedPlan,
  keepTheirs,
  paintWithHers,
} from '../../state/painting/handed-plan.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { hashOf } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { Fold } from '../../ui/layout/fold.tsx';
import { WorkLine } from '../../ui/layout/waiting.tsx';
import styles from './plan-screen.module.css';

interface HandedOnProps {
  studio: Studio;
  handed: HandedNeeds;
  plan: WashPlan;
}

/** Of a plan that was handed on, as by a teacher: whose paints it is painted with, and what then differs. */
export function HandedOn({ studio, handed, plan }: HandedOnProps) {
  const { ownBox } = handed;
  const painting = studio.painting.value;
  const families = studio.seen.value?.reading.families;
  const box = ownBox.box.value;
  const { found, look } = useMemo(() => createHandedPlan(handed), [handed]);
  useEffect(() => {
    if (painting?.handedOn && families) return look({ painting, plan, families }, box);
  }, [look, painting, plan, families, box]);
  const stands = found.value;
  if (!painting?.handedOn) return null;
  if (studio.work.value) return <WorkLine studio={studio} />;
  if (!stands) return null;
  if (stands.kind === 'asked')
    return <WhosePaints studio={studio} ownBox={ownBox} asked={stands} />;
  if (stands.kind === 'theirs')
    return (
      <p class={styles.from}>
        {stands.all ? 'Handed on to you; you own all its paints.' : 'With the teacher’s paints.'}{' '}
        {stands.measured}
      </p>
    );
  return (
    <Fold title="Your paints, not the teacher’s" beside="what differs">
      <Sentences all={stands.sentences} />
    </Fold>
  );
}

function Sentences({ all }: { all: readonly string[] }) {
  return (
    <ul class={styles.list}>
      {all.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}

interface WhosePaintsProps extends Pick<HandedOnProps, 'studio'> {
  ownBox: HandedNeeds['ownBox'];
  asked: Extract<HandedPlan, { kind: 'asked' }>;
}

/** Asked once, before anything is made anew: until then the plan is shown as it came. */
function WhosePaints({ studio, ownBox, asked }: WhosePaintsProps) {
  const busy = useSignal(false);
  const answer = (how: () => Promise<void>) => async (): Promise<void> => {
    busy.value = true;
    await how();
    busy.value = false;
  };
  const ticked = tickedPaints(ownBox.box.value) !== null;
  return (
    <section class="stack" aria-label="Whose paints">
      <h2>Whose paints?</h2>
      <p>
        This plan was handed on to you. {ticked ? 'You have' : 'Most painters have'} no{' '}
        {joinWithOr(asked.missing)}.
      </p>
      <a class={buttonClass('quiet')} href={hashOf({ screen: 'box' })}>
        {ticked ? 'Look at your box' : 'Tick your paints first'}
      </a>
      <Button large wide disabled={busy.value} onClick={answer(() => paintWithHers(studio, asked))}>
        Paint it with my paints
      </Button>
      <Button
        large
        wide
        disabled={busy.value}
        onClick={answer(() => keepTheirs(studio, ownBox, asked))}
      >
        Keep the teacher’s paints
      </Button>
      <Sentences all={asked.standIns.flatMap(({ told }) => (told ? [standInInWords(told)] : []))} />
      {asked.measured && <p>{asked.measured}</p>}
    </section>
  );
}
