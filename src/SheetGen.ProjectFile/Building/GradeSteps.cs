using SheetGen.Model;

namespace SheetGen.ProjectFile.Building;

/// <summary>
/// Bottom steps made from the finished grade: each panel's bottom is datum + k * rise with the greatest whole k that is at least the
/// embedment below finished grade over the whole panel.
/// </summary>
internal static class GradeSteps
{
    /// <summary>Keeps an exact multiple of the rise from being lost to the last bit.</summary>
    private const double Slack = 1e-9;

    /// <summary>The steps, the first at the wall's start; neighbours of one elevation are one step.</summary>
    public static List<ProfilePoint> Of(
        double start, double end, IReadOnlyList<double> panelBreaks, Profile finishedGrade, double embedment, double rise, double datum)
    {
        double[] edges = [start, .. panelBreaks, end];
        var steps = new List<ProfilePoint>();
        int next = 0;
        for (int i = 0; i + 1 < edges.Length; i++)
        {
            double least = Math.Min(finishedGrade.At(edges[i]), finishedGrade.Before(edges[i + 1]));
            while (next < finishedGrade.Points.Count && finishedGrade.Points[next].Along <= edges[i])
                next++;
            for (; next < finishedGrade.Points.Count && finishedGrade.Points[next].Along < edges[i + 1]; next++)
                least = Math.Min(least, finishedGrade.Points[next].Elevation);
            double elevation = datum + Math.Floor((least - embedment - datum) / rise + Slack) * rise;
            if (steps.Count == 0 || steps[^1].Elevation != elevation)
                steps.Add(new ProfilePoint(edges[i], elevation));
        }
        return steps;
    }
}
