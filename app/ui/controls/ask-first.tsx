import { useSignal } from '@preact/signals';
import { Button } from './button.tsx';

interface AskFirstProps {
  /** What the button says, and what is heard of it where that is more. */
  children: string;
  spoken?: string;
  question: string;
  /** The word on the button that does it. */
  yes: string;
  /** The word on the one that leaves all as it is. */
  no?: string;
  onYes: () => void;
}

/** A quiet button for what can't be undone at once: a tap asks, and only the answer does it. */
export function AskFirst(props: AskFirstProps) {
  const { children, spoken, question, yes, no = 'Keep', onYes } = props;
  const asking = useSignal(false);
  if (!asking.value)
    return (
      <Button
        look="quiet"
        aria-label={spoken}
        onClick={() => {
          asking.value = true;
        }}
      >
        {children}
      </Button>
    );
  const answered = (): void => {
    asking.value = false;
  };
  return (
    <span class="stack">
      <span>{question}</span>
      <Button
        onClick={() => {
          answered();
          onYes();
        }}
      >
        {yes}
      </Button>
      <Button look="quiet" onClick={answered}>
        {no}
      </Button>
    </span>
  );
}
