import type { OutgoingHttpHeaders } from 'node:http';

/** A host as browsers write it, with its port; anything else is not put into a header. */
const plainHost = /^[A-Za-z0-9.:[\]-]{1,255}$/;

/**
 * Everything from this server alone. Styles may stand in elements, since the accessible controls set them so;
 * WebAssembly is the solver of the mat count. The socket is named because older Safari does not take it for 'self'.
 */
export function securityHeaders(host: string | undefined): OutgoingHttpHeaders {
  const socket = host !== undefined && plainHost.test(host) ? ` ws://${host} wss://${host}` : '';
  return {
    'content-security-policy': [
      "default-src 'none'",
      "script-src 'self' 'wasm-unsafe-eval'",
      "style-src 'self' 'unsafe-inline'",
      "img-src 'self' data: blob:",
      "font-src 'self'",
      `connect-src 'self'${socket}`,
      "worker-src 'self' blob:",
      "manifest-src 'self'",
      "base-uri 'none'",
      "form-action 'none'",
      "frame-ancestors 'none'",
    ].join('; '),
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=()',
    'cross-origin-resource-policy': 'same-origin',
  };
}
