import { type PaperChoice, paperWeights } from '../../model/drying/paper-choice.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './more-panel.module.css';

interface PaperRowsProps {
  paper: PaperChoice;
  onChoose: (paper: PaperChoice) => void;
}

const weights = paperWeights.map((gsm) => [String(gsm), `${gsm} g/m²`] as const);
const fibres = [
  ['cellulose', 'Cellulose'],
  ['cotton', 'Cotton'],
] as const;

/** What she paints on: each paper is learned for itself. */
export function PaperRows({ paper, onChoose }: PaperRowsProps) {
  return (
    <>
      <h4>Paper</h4>
      <ChoiceRow
        label="Weight of the paper"
        choices={weights}
        chosen={String(paper.gsm)}
        onChoose={(gsm) => onChoose({ ...paper, gsm: Number(gsm) })}
      />
      <ChoiceRow
        label="Fibre of the paper"
        choices={fibres}
        chosen={paper.fibre}
        onChoose={(fibre) => onChoose({ ...paper, fibre })}
      />
      <p class={styles.quiet}>
        The weight changes the reckoned times. The fibre does not: it only keeps what is learned of
        each paper apart.
      </p>
    </>
  );
}
