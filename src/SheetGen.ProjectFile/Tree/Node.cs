using SheetGen.Model.Problems;

namespace SheetGen.ProjectFile.Tree;

/// <summary>A value of the file as it stands, with its place.</summary>
internal abstract record Node(SourceSpot Spot);

/// <summary>A single value.</summary>
/// <param name="Quoted">True where it stands in quotes or as a block of text.</param>
internal sealed record ScalarNode(string Text, bool Quoted, SourceSpot Spot) : Node(Spot)
{
    public bool IsEmpty => !Quoted && Text is "" or "~" or "null";
}

/// <summary>Stands where a value would be that could not be had; why has been reported.</summary>
internal sealed record FaultyNode(SourceSpot Spot) : Node(Spot);

/// <summary>A list.</summary>
internal sealed record ListNode(IReadOnlyList<Node> Items, SourceSpot Spot) : Node(Spot);

/// <summary>A block of keys.</summary>
internal sealed record MapNode(IReadOnlyList<KeyValuePair<ScalarNode, Node>> Entries, SourceSpot Spot) : Node(Spot);
