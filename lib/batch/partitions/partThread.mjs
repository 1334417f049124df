import { loadProgram } from '../program/loadProgram.mjs';

// A thread does not take over what the process loads TypeScript with.
await loadProgram('partThread');
