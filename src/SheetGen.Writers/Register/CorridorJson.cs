using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using SheetGen.Model.Corridors;
using SheetGen.Model.Studies;

namespace SheetGen.Writers.Register;

/// <summary>The states of a corridor's walls, and the register, as JSON: camel case, words for outcomes, what does not apply left out.</summary>
public static class CorridorJson
{
    private static readonly CorridorJsonContext Context = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public static byte[] Bytes(WallState state) => JsonSerializer.SerializeToUtf8Bytes(state, Context.WallState);

    public static byte[] Bytes(RegisterFile register) => JsonSerializer.SerializeToUtf8Bytes(register, Context.RegisterFile);

    public static byte[] Bytes(VariantState state) => JsonSerializer.SerializeToUtf8Bytes(state, Context.VariantState);

    public static byte[] Bytes(StudyFile study) => JsonSerializer.SerializeToUtf8Bytes(study, Context.StudyFile);

    /// <summary>A variant's state as it was kept; null where the bytes are no state of this form.</summary>
    public static VariantState? Variant(byte[] bytes) => Of(bytes, Context.VariantState) is { Format: 1 } state ? state : null;

    /// <summary>A state as it was kept; null where the bytes are no state of this form.</summary>
    public static WallState? State(byte[] bytes) => Of(bytes, Context.WallState) is { Format: 1 } state ? state : null;

    private static T? Of<T>(byte[] bytes, JsonTypeInfo<T> type)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(bytes, type);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>register.json: what other programs read of a corridor.</summary>
/// <param name="Exit">The worst of the walls' exit codes; 1 at least where a clash across files was found.</param>
public sealed record RegisterFile(int Format, string Title, string Version, int Exit, IReadOnlyList<RegisterWall> Walls, IReadOnlyList<Clash> Clashes);

/// <param name="FirstSheet">Number of its first sheet in the whole set; null where it has none.</param>
public sealed record RegisterWall(
    string Name, string File, string Stage, string Contract, WallOutcome Outcome, int Exit, int? FirstSheet, int Clashes, IReadOnlyList<string> Problems, WallFigures? Figures);

/// <summary>study.json: what other programs read of a study.</summary>
/// <param name="Keys">The varied keys, in the order of each variant's values.</param>
/// <param name="Best">Numbers of the variants, best first.</param>
public sealed record StudyFile(int Format, string Title, string Version, string Units, IReadOnlyList<string> Keys, IReadOnlyList<VariantState> Variants, IReadOnlyList<int> Best);

[JsonSourceGenerationOptions(UseStringEnumConverter = true)]
[JsonSerializable(typeof(WallState))]
[JsonSerializable(typeof(RegisterFile))]
[JsonSerializable(typeof(VariantState))]
[JsonSerializable(typeof(StudyFile))]
internal sealed partial class CorridorJsonContext : JsonSerializerContext;
