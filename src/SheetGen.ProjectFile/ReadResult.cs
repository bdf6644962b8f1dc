using System.Text;
using SheetGen.Model;
using SheetGen.Model.Problems;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile;

/// <summary>What reading a project file gives.</summary>
/// <param name="Project">The project; null where any problem is an error.</param>
/// <param name="Problems">Every problem of the file, in order of place.</param>
/// <param name="Text">The file's text, for showing lines of it; empty where it could not be read.</param>
public sealed record ReadResult(WallProject? Project, IReadOnlyList<Problem> Problems, string Text = "")
{
    internal Node? Root { get; init; }

    /// <summary>Where a key stands, named by the blocks that it stands in; the file's start where the file does not have it.</summary>
    public SourceSpot SpotOf(string file, params ReadOnlySpan<string> path)
    {
        Node? at = Root;
        var spot = new SourceSpot(file, 1, 1);
        foreach (string key in path)
        {
            KeyValuePair<ScalarNode, Node> entry = at is MapNode map ? map.Entries.FirstOrDefault(e => e.Key.Text == key) : default;
            if (entry.Key is null)
                return new SourceSpot(file, 1, 1);
            (spot, at) = (entry.Key.Spot, entry.Value);
        }
        return spot;
    }

    /// <summary>Where the first single value stands that has a sign in it; null where none has.</summary>
    public SourceSpot? SpotOfSign(Rune sign) => Root is null ? null : SpotIn(Root, sign.ToString());

    private static SourceSpot? SpotIn(Node node, string sign) => node switch
    {
        ScalarNode value => value.Text.Contains(sign, StringComparison.Ordinal) ? value.Spot : null,
        ListNode list => list.Items.Select(i => SpotIn(i, sign)).FirstOrDefault(s => s is not null),
        MapNode map => map.Entries.Select(e => SpotIn(e.Value, sign)).FirstOrDefault(s => s is not null),
        _ => null,
    };
}
