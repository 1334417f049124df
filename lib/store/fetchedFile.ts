/** What to do about a file that did not come; every sentence of its kind ends with it. */
const advice = 'check the connection, then try again';

function said(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** A file that did not come whole is asked for once more after this time. */
const pause_ms = 1_000;

/** The site answered, and not with the file: asked again it would say the same. */
class OtherAnswer extends Error {}

/**
 * Fetches a file of the site and reads it; a failure names the file, says what happened and what to do, which the browser's own
 * error does not ('Failed to fetch').
 *
 * What breaks off is asked for once more: a browser that is short of time ends the service worker that hands files out, in the middle
 * of one, and starts it again with the next request.
 *
 * @param name what the file is called for the reader, such as its address below the root of the site
 * @param read takes the body, as text, bytes or a stream
 * @throws Error if nothing answers, if the answer is not the file, or if it breaks off or cannot be read
 */
export async function fetchedFile<Content>(
  name: string,
  address: URL | string,
  read: (response: Response) => Promise<Content>,
): Promise<Content> {
  try {
    return await fetchedAtOnce(name, address, read);
  } catch (error) {
    if (error instanceof OtherAnswer) throw error;
    await new Promise((resolve) => setTimeout(resolve, pause_ms));
    return fetchedAtOnce(name, address, read);
  }
}

async function fetchedAtOnce<Content>(
  name: string,
  address: URL | string,
  read: (response: Response) => Promise<Content>,
): Promise<Content> {
  const response = await fetch(address).catch((error: unknown) => {
    throw new Error(
      `${name} could not be loaded, since the site did not answer (${said(error)}): ${advice}`,
      { cause: error },
    );
  });
  if (!response.ok)
    throw new OtherAnswer(
      `${name} could not be loaded, since the site answered with status ${response.status}: try again, or ask whoever serves the site whether the file is there`,
    );
  return read(response).catch((error: unknown) => {
    throw new Error(
      `${name} was not loaded as a whole, or is not what it should be (${said(error)}): ${advice}`,
      {
        cause: error,
      },
    );
  });
}
