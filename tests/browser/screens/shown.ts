import '../../../app/styles/base.css';
import '../../../app/styles/tokens.css';
import { type ComponentChild, render } from 'preact';

export interface Shown {
  readonly host: HTMLElement;
  readonly again: (what: ComponentChild) => void;
  readonly leave: () => void;
}

/** A component on the page, until it leaves. */
export function shown(what: ComponentChild): Shown {
  const host = document.createElement('div');
  document.body.append(host);
  render(what, host);
  return {
    host,
    again: (next) => render(next, host),
    leave: () => {
      render(null, host);
      host.remove();
    },
  };
}
