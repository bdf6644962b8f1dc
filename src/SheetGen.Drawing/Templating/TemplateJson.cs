using System.Text.Json;
using System.Text.Json.Serialization;

namespace SheetGen.Drawing.Templating;

/// <summary>How the template files are read; made when the program is built, since finding out at run time takes longer than reading.</summary>
[JsonSourceGenerationOptions(
    PropertyNameCaseInsensitive = true, ReadCommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, RespectNullableAnnotations = true)]
[JsonSerializable(typeof(LayerList))]
[JsonSerializable(typeof(SizeList))]
[JsonSerializable(typeof(List<NoteBlock>))]
[JsonSerializable(typeof(LanguageList))]
[JsonSerializable(typeof(Dictionary<string, TextStyle>))]
internal sealed partial class TemplateJson : JsonSerializerContext;
