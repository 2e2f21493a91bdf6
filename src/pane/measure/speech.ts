/** Words said by a voice that is on this machine; those that are fetched from elsewhere are never used. */
export function say(text: string): "said" | "no voice" {
  const { speechSynthesis: speech } = globalThis;
  const voices = speech?.getVoices().filter(({ localService, lang }) => localService && /^en\b/i.test(lang)) ?? [];
  if (!speech || voices.length === 0) return "no voice";
  const words = new SpeechSynthesisUtterance(text);
  words.voice = voices[0]!;
  words.lang = voices[0]!.lang;
  speech.cancel();
  speech.speak(words);
  return "said";
}
