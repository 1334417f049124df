import { config } from 'zod/v4/core';

// The site's policy forbids making functions from text; without this, zod tries it once and the browser reports it.
config({ jitless: true });

export * from 'zod/v4';
