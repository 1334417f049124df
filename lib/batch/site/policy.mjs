import { createHash } from 'node:crypto';

/**
 * What a script file that runs as a worker may do: the page's policy does not reach it, its own answer states it.
 * The database engine is compiled from a blob that the worker itself unpacked.
 */
export const workerPolicy = policyText({
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'connect-src': "'self' blob:",
  'worker-src': "'self'",
});

/** What a page may do: files of the site itself, and the inline scripts with these hashes. */
function pagePolicy(hashes) {
  return policyText({
    'default-src': "'none'",
    'script-src': ["'self'", ...hashes].join(' '),
    'style-src': "'self'",
    // A picture to be saved is drawn from a blob that the page itself made.
    'img-src': "'self' blob:",
    'connect-src': "'self'",
    'worker-src': "'self'",
    'manifest-src': "'self'",
    'base-uri': "'none'",
    'form-action': "'none'",
  });
}

function policyText(directives) {
  return Object.entries(directives)
    .map((directive) => directive.join(' '))
    .join('; ');
}

const script = /<script\b([^>]*)>([\s\S]*?)<\/script>/gi;
const charset = /<meta charset="utf-8"\s*\/?>/i;
const stated = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"\/>/;

/** Hashes of the inline scripts of a page as a policy names them, each once, in order. */
export function inlineScriptHashes(html) {
  // Data in a page is no script: nothing runs it, and it needs no leave.
  const inline = [...html.matchAll(script)].filter(
    ([, attributes]) => !/\ssrc\s*=|\stype="application\/json"/i.test(attributes),
  );
  const hashes = inline.map(
    ([, , text]) => `'sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}'`,
  );
  return [...new Set(hashes)];
}

/**
 * The page with its policy as the first thing after its character set, before anything that it governs.
 *
 * @throws Error if the page does not state its character set, or has a policy already
 */
export function withPolicy(html) {
  if (stated.test(html)) throw new Error('withPolicy requires a page without a policy, got one that has it');
  if (!charset.test(html))
    throw new Error('withPolicy requires <meta charset="utf-8"> in the page, got none');
  const policy = pagePolicy(inlineScriptHashes(html));
  return html.replace(
    charset,
    (found) => `${found}<meta http-equiv="Content-Security-Policy" content="${policy}"/>`,
  );
}

/** The page with its policy stated anew, for inline scripts that are others than when it was stated. */
export function withPolicyAnew(html) {
  return withPolicy(html.replace(stated, ''));
}

/** The policy that a page states, or null. */
export function policyOf(html) {
  return stated.exec(html)?.[1] ?? null;
}
