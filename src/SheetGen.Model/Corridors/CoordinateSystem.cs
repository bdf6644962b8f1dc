namespace SheetGen.Model.Corridors;

/// <summary>The coordinate system of a project file of a corridor: what the list names, and the zone that the project file states.</summary>
/// <param name="Key">Equal for two of one system: case and runs of blanks do not count.</param>
/// <param name="Name">For a person; "none named" where neither says anything.</param>
public sealed record CoordinateSystem(string Key, string Name)
{
    public static CoordinateSystem Of(string coordinates, string zone)
    {
        string[] told = [.. new[] { coordinates, zone }.Select(t => string.Join(' ', t.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)))];
        string[] said = [.. told.Where(t => t.Length > 0)];
        return new CoordinateSystem(string.Join('\n', told).ToUpperInvariant(), said.Length == 0 ? "none named" : string.Join(", ", said));
    }
}
