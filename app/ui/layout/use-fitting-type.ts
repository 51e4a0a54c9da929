import { useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

const smallest = 0.4;
const step = 0.97;
/** Some of the page is left free: another printer's letters may run a little wider. */
const fill = 0.97;

/** Size of type, 1 at most, at which the content of a page is no higher than the page. */
export function useFittingType(page: RefObject<HTMLElement | null>, dependency: unknown): number {
  const type = useSignal(1);
  useLayoutEffect(() => {
    const content = page.current?.firstElementChild;
    if (!page.current || !(content instanceof HTMLElement)) return;
    const room = page.current.clientHeight * fill;
    let size = 1;
    for (; size > smallest; size *= step) {
      content.style.setProperty('--type', String(size));
      if (content.scrollHeight <= room) break;
    }
    type.value = size;
  }, [dependency]);
  return type.value;
}
