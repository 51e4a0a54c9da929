import type { PaintCard } from '../../model/paint.ts';
import { hashOf } from '../../state/route.ts';
import { buttonClass } from '../common/button.tsx';

/** The way from a paint of the box to measuring it. */
export function MeasureLink({ card }: { card: PaintCard }) {
  const again = card.optics?.from === 'measured';
  return (
    <a
      class={buttonClass(card.optics ? 'plain' : 'quiet')}
      href={hashOf({ screen: 'measure', paintId: card.id })}
    >
      {again ? 'Measure it again' : 'Measure it from a photo'}
      <span class="spoken">: {card.name}</span>
    </a>
  );
}
