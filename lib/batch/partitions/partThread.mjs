import { register } from 'tsx/esm/api';

// A thread does not take over what the process loads TypeScript with.
register();
await import('./partThread.ts');
