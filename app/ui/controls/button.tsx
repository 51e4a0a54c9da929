import type { ButtonHTMLAttributes } from 'preact';
import styles from './button.module.css';

type Look = 'plain' | 'main' | 'quiet';

interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'size'> {
  look?: Look;
  large?: boolean;
  wide?: boolean;
}

export const buttonClass = (look: Look = 'plain', large = false, wide = false): string =>
  [
    styles.button,
    look === 'main' && styles.main,
    look === 'quiet' && styles.quiet,
    large && styles.large,
    wide && styles.wide,
  ]
    .filter(Boolean)
    .join(' ');

export function Button({ look = 'plain', large = false, wide = false, ...rest }: ButtonProps) {
  return <button type="button" class={buttonClass(look, large, wide)} {...rest} />;
}
