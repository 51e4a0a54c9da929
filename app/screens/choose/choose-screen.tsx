import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { App } from '../../state/create-app.ts';
import { type Candidate, createChoosing } from '../../state/painting/choosing.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import { pictureLayers } from '../../ui/picture/picture-layers.ts';
import styles from './choose-screen.module.css';

/** Several photos side by side in grey, each with a sentence: which one makes the better painting? */
export function ChooseScreen({ app }: { app: App }) {
  const choosing = useMemo(() => {
    const { store, client } = app.paintNeeds;
    const onChosen = ({ id }: { id: string }): void =>
      app.router.go({ screen: 'look', paintingId: id });
    return createChoosing({ store, client, onChosen });
  }, [app]);
  const inColour = useSignal(false);
  useEffect(() => {
    void choosing.open();
    return choosing.leave;
  }, [choosing]);
  const candidates = choosing.candidates.value;
  return (
    <PageLayout
      name="choose"
      class={styles.page}
      top={
        <TopBar title="Which one to paint" back="Paintings" backTo="#/">
          <Button
            aria-pressed={!inColour.value}
            onClick={() => {
              inColour.value = !inColour.value;
            }}
          >
            Grey
          </Button>
        </TopBar>
      }
    >
      {choosing.problem.value && <p role="alert">{choosing.problem.value}</p>}
      {candidates.length === 0 && (
        <p>Nothing to choose among. Choose several photos at once on the first screen.</p>
      )}
      {candidates.length > 1 && (
        <p class={styles.lead}>
          Half close your eyes. Which one still reads, in a few clear shapes of light and dark?
          Paint that one; the others are put away, and Paintings can bring them back.
        </p>
      )}
      <ul class={styles.candidates}>
        {candidates.map((candidate) => (
          <CandidateCard
            key={candidate.painting.id}
            candidate={candidate}
            show={inColour.value ? 'colour' : 'grey'}
            onTap={() => {
              inColour.value = !inColour.value;
            }}
            onChoose={() => void choosing.choose(candidate.painting.id)}
          />
        ))}
      </ul>
    </PageLayout>
  );
}

interface CandidateCardProps {
  candidate: Candidate;
  show: 'colour' | 'grey';
  onTap: () => void;
  onChoose: () => void;
}

function CandidateCard({ candidate, show, onTap, onChoose }: CandidateCardProps) {
  const { painting, pictures, sentence } = candidate;
  const layers = useMemo(() => (pictures ? pictureLayers(pictures) : {}), [pictures]);
  return (
    <li class={styles.candidate}>
      <div class={styles.picture}>
        {pictures && (
          <Picture
            label={painting.title}
            tapLabel={show === 'grey' ? 'Tap for colour' : 'Tap for grey'}
            size={pictures.grey}
            layers={layers}
            show={show}
            tapShows={show === 'grey' ? 'colour' : 'grey'}
            onTap={onTap}
          />
        )}
      </div>
      <h2 class={styles.title}>{painting.title}</h2>
      <p role="status">{sentence ?? 'Looking at its values …'}</p>
      <Button look="main" onClick={onChoose}>
        Paint this one
      </Button>
    </li>
  );
}
