using System.Globalization;
using SheetGen.Drawing.Details;

namespace SheetGen.Drawing.Set;

/// <summary>What a part of a sheet may refer to while it is drawn: the names of its own sheet and of those where the details stand.</summary>
public sealed record SheetRefs(string Sheet, IReadOnlyList<DetailPlace> Details)
{
    /// <summary>The details of a kind that stand for any of several walls, design sections, corners or openings.</summary>
    public IEnumerable<DetailPlace> Of(DetailKind kind, params IReadOnlyList<object> subjects) =>
        Details.Where(d => d.Detail.Kind == kind && d.Detail.Subjects.Any(subjects.Contains));
}

/// <summary>A detail with its number and the sheet on which it stands.</summary>
public sealed record DetailPlace(DetailView Detail, int Number, string Sheet)
{
    /// <summary>The number as it is printed.</summary>
    public string Name => Number.ToString(CultureInfo.InvariantCulture);
}
