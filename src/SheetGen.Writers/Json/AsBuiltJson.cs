using SheetGen.Model.Results;
using SheetGen.Model.Revisions;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Json;

/// <summary>What the record of drilled nails says, as JSON: progress, tolerances, findings, nails in trouble. Lengths in project units.</summary>
public static class AsBuiltJson
{
    public static string Text(AsBuiltReport r, LengthUnit unit) => JsonText.Of(json =>
    {
        json.WriteNumber("format", 1);
        json.WriteString("units", Lengths.Symbol(unit));
        json.WriteNumber("drilled", r.DrilledProduction);
        json.WriteNumber("planned", r.PlannedProduction);
        json.WriteNumber("drilled_length", r.DrilledLength);
        json.WriteNumber("planned_length_of_drilled", r.PlannedLengthOfDrilled);
        json.WriteNumber("planned_length", r.PlannedLength);
        json.WriteNumber("grout", r.Grout);
        json.Objects("tolerances_not_kept", r.Misses, miss =>
        {
            json.WriteString("mark", miss.Mark);
            json.WriteString("what", miss.What);
        });
        json.Objects("findings", r.NewFindings, f =>
        {
            json.WriteString("code", f.Code);
            json.WriteString("severity", ResultWords.Of(f.Severity));
            json.WriteString("message", f.Message);
        });
        json.Objects("in_trouble", r.Open, o =>
        {
            json.WriteString("mark", o.Mark);
            json.WriteString("because", o.Because);
            json.TextIfAny("could_go_to", o.Could);
        });
    });
}
