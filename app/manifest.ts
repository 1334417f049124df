import type { MetadataRoute } from 'next';

export const dynamic = 'force-static';

/** Lets a browser install the site as a program of its own; addresses are told from where the manifest lies. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Endfloat',
    short_name: 'Endfloat',
    description: 'Turbocharger overhaul readings in; wear rates, margins and dates out.',
    start_url: './',
    scope: './',
    display: 'standalone',
    lang: 'en-GB',
    background_color: '#fbfaf6',
    theme_color: '#fbfaf6',
    icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
  };
}
