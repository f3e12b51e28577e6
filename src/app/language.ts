import { language, speak, spoken } from '../words/index.ts';

const key = 'gentlebend.language';

/**
 * Takes the language into use that the person chose in this browser, else the first of the browser's own
 * that the program has texts in, and tells the page which it is.
 */
export async function speakAsWished(): Promise<void> {
  const chosen = kept();
  await speak(spoken(chosen === null ? navigator.languages : [chosen]));
  document.documentElement.lang = language;
}

function kept(): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
