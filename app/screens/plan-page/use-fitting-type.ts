import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

const smallest = 0.4;
const step = 0.96;
/** Some of the page is left free: another printer's letters may run a little wider. */
const fill = 0.98;

/** Size of type, 1 at most, at which the content of a page is no higher than the page. */
export function useFittingType(page: RefObject<HTMLElement | null>, of: unknown): number {
  const type = useSignal(1);
  const measured = useSignal<unknown>(null);
  useLayoutEffect(() => {
    const content = page.current?.firstElementChild;
    if (!page.current || !content) return;
    if (measured.value !== of) {
      measured.value = of; // another plan: from the full size again
      type.value = 1;
      return;
    }
    const isTooHigh = content.scrollHeight > page.current.clientHeight * fill;
    if (isTooHigh && type.value > smallest) type.value *= step;
  });
  return type.value;
}
