namespace SheetGen.Drawing.Templating;

/// <summary>A language as its file has it: the text of each phrase, words of the take-off's tables, sentences of the checker and of its reports by their English form.</summary>
/// <param name="SpeaksAsChecker">True for the checker's own language, whose sentences are only those that sheets say otherwise.</param>
internal sealed record LanguageList(
    Dictionary<string, string>? Phrases, Dictionary<string, string>? Terms, Dictionary<string, string>? Sentences, Dictionary<string, string>? Reports = null, bool SpeaksAsChecker = false);
