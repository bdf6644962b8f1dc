using System.Collections;
using System.Globalization;
using System.Reflection;
using SheetGen.Model;
using SheetGen.Model.Problems;

namespace SheetGen.Tests.Forms;

/// <summary>All that a project says, as lines that can be compared; places in the file and its hash are left out, and obstructions and borings stand in order of their names.</summary>
internal static class ProjectMeaning
{
    public static IReadOnlyList<string> Of(WallProject project)
    {
        var lines = new List<string>();
        Add(project with { InputHash = "", Obstructions = [.. project.Obstructions.OrderBy(o => o.Name, StringComparer.Ordinal)], Borings = [.. project.Borings.OrderBy(b => b.Name, StringComparer.Ordinal)] }, "project", [], lines);
        return lines;
    }

    private static void Add(object? value, string path, HashSet<object> above, List<string> lines)
    {
        switch (value)
        {
            case null or SourceSpot:
                return;
            case string or bool or Enum:
                lines.Add($"{path} = {value}");
                return;
            case IFormattable number:
                lines.Add($"{path} = {number.ToString(null, CultureInfo.InvariantCulture)}");
                return;
            case IEnumerable items:
                int at = 0;
                foreach (object? item in items)
                    Add(item, $"{path}[{at++}]", above, lines);
                return;
        }
        bool isOnce = !value.GetType().IsValueType;
        if (isOnce && !above.Add(value))
            return;
        foreach (PropertyInfo property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0).OrderBy(p => p.Name, StringComparer.Ordinal))
        {
            if (path.Count(c => c == '.') < 12)
                Add(property.GetValue(value), $"{path}.{property.Name}", above, lines);
        }
        if (isOnce)
            above.Remove(value);
    }
}
