import type { Plugin } from 'vite';

const policy = /\s*<meta\s+http-equiv="Content-Security-Policy"[^>]*>/;

/**
 * Vite's development server puts styles and its own script into the page, which the page's
 * Content-Security-Policy forbids: there, and only there, the policy is taken out.
 */
export function openPolicy(): Plugin {
  return {
    name: 'open-policy',
    apply: 'serve',
    transformIndexHtml: { order: 'pre', handler: (html) => html.replace(policy, '') },
  };
}
