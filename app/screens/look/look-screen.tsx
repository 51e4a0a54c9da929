import { useComputed, useSignal } from '@preact/signals';
import { linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { buttonClass } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import { Picture } from '../common/picture.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { ValueScale } from '../common/value-scale.tsx';
import { Waiting } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import { lookLayers } from './look-layers.ts';
import styles from './look-screen.module.css';
import { StudyFacts } from './study-facts.tsx';

type LookView = 'colour' | 'grey' | 'values';

/** The value study: the reference in grey first, then its few values, whites and colours. */
export function LookScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const view = useSignal<LookView>('grey');
  const only = useSignal<number | null>(null);
  const seen = studio.seen.value;
  const layers = useComputed(() =>
    studio.seen.value ? lookLayers(studio.seen.value, only.value) : {},
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
        seen ? (
          <Picture
            label="Your reference"
            tapLabel={view.value === 'grey' ? 'Tap for colour' : 'Tap for grey'}
            size={seen.reading.raster}
            layers={layers.value}
            show={show}
            ahead={['colour', 'grey', 'values']}
            onTap={toggleGrey}
          />
        ) : (
          <Waiting studio={studio} />
        )
      }
      panel={
        seen && (
          <div class={styles.panel}>
            <ChoiceRow
              label="What the picture shows"
              choices={[
                ['grey', 'Grey'],
                ['colour', 'Colour'],
                ['values', 'Values'],
              ]}
              chosen={only.value === null ? view.value : null}
              onChoose={choose}
            />
            <ValueScale
              bands={seen.reading.bands}
              current={new Set(only.value === null ? [] : [only.value])}
              onBand={(band) => {
                only.value = only.value === band ? null : band;
              }}
            />
            <StudyFacts studio={studio} reading={seen.reading} />
          </div>
        )
      }
      actions={
        seen ? (
          <a class={buttonClass('main', true)} href={linkTo(paintingId, 'plan')}>
            Show me the washes
          </a>
        ) : null
      }
    />
  );
}
