namespace SheetGen.Drawing.Templating;

/// <summary>A language as its file has it: the text of each phrase, and words of the take-off's tables by their English form.</summary>
internal sealed record LanguageList(Dictionary<string, string> Phrases, Dictionary<string, string>? Terms);
