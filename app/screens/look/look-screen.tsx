import { useComputed, useSignal } from '@preact/signals';
import { linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { Button, buttonClass } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import { Picture } from '../common/picture.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { ValueScale } from '../common/value-scale.tsx';
import { Waiting, WorkLine } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import { pictureLayers, valueLayers } from './look-layers.ts';
import styles from './look-screen.module.css';
import { StudyFacts } from './study-facts.tsx';

type LookView = 'colour' | 'grey' | 'values';

/** The value study: the reference in grey first, then its few values, whites and colours. */
export function LookScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const view = useSignal<LookView>('grey');
  const only = useSignal<number | null>(null);
  const seen = studio.seen.value;
  const pictures = studio.pictures.value;
  const inColourAndGrey = useComputed(() =>
    studio.pictures.value ? pictureLayers(studio.pictures.value) : {},
  );
  const inValues = useComputed(() =>
    studio.seen.value ? valueLayers(studio.seen.value, only.value) : {},
  );
  const show = only.value === null ? view.value : `only-${only.value}`;
  const choose = (next: LookView): void => {
    only.value = null;
    view.value = next;
  };
  const toggleGrey = (): void => {
    if (only.value !== null) choose(view.value);
    else choose(view.value === 'grey' ? 'colour' : 'grey');
  };

  return (
    <Workplace
      name="look"
      top={
        <TopBar title="Value study" back="Paintings" backTo="#/">
          <a class={buttonClass('quiet')} href={linkTo(paintingId, 'sheet')}>
            Sheet
          </a>
        </TopBar>
      }
      picture={
        pictures ? (
          <Picture
            label="Your reference"
            tapLabel={view.value === 'grey' ? 'Tap for colour' : 'Tap for grey'}
            size={pictures.grey}
            layers={{ ...inColourAndGrey.value, ...inValues.value }}
            show={show}
            ahead={['colour', 'grey', 'values']}
            onTap={toggleGrey}
          />
        ) : (
          <Waiting studio={studio} />
        )
      }
      panel={
        pictures && (
          <div class={styles.panel}>
            <ChoiceRow
              label="What the picture shows"
              choices={[
                ['grey', 'Grey'],
                ['colour', 'Colour'],
                ...(seen ? ([['values', 'Values']] as const) : []),
              ]}
              chosen={only.value === null ? view.value : null}
              onChoose={choose}
            />
            {seen ? (
              <>
                <ValueScale
                  bands={seen.reading.bands}
                  current={new Set(only.value === null ? [] : [only.value])}
                  onBand={(band) => {
                    only.value = only.value === band ? null : band;
                  }}
                />
                <StudyFacts studio={studio} reading={seen.reading} />
              </>
            ) : (
              <WorkLine studio={studio} />
            )}
          </div>
        )
      }
      actions={
        studio.painting.value?.purpose === 'study' ? (
          <Button large disabled={!seen} onClick={() => void studio.paintIt()}>
            Paint this one too
          </Button>
        ) : seen ? (
          <a class={buttonClass('main', true)} href={linkTo(paintingId, 'plan')}>
            Show me the washes
          </a>
        ) : null
      }
    />
  );
}
