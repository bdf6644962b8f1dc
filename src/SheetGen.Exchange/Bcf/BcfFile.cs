using System.Xml;
using SheetGen.Exchange.Common;
using SheetGen.Model.Files;
using SheetGen.Model.Results;

namespace SheetGen.Exchange.Bcf;

/// <summary>
/// findings.bcf: BCF 3.0 with a topic for every finding: its message, its severity as priority, a camera that looks at it, and the nails and
/// obstructions that it concerns, by the ids that nails.ifc has.
/// </summary>
internal static class BcfFile
{
    public const string FileName = "findings.bcf";

    public static byte[] Make(ExchangeInput input)
    {
        var ids = new StableId(input.Project);
        var used = new HashSet<string>();
        var entries = new List<(string, byte[])>
        {
            ("bcf.version", XmlBytes.Of(xml =>
            {
                xml.WriteStartElement("Version");
                xml.WriteAttributeString("VersionId", "3.0");
                xml.WriteEndElement();
            })),
            ("extensions.xml", XmlBytes.Of(xml => WriteExtensions(xml, input))),
            ("project.bcfp", XmlBytes.Of(xml => WriteProject(xml, input, ids))),
        };
        for (int i = 0; i < input.Report.Findings.Count; i++)
        {
            var topic = new BcfTopic(input, ids, input.Report.Findings[i], i + 1, used);
            entries.Add((topic.Id + "/markup.bcf", XmlBytes.Of(topic.WriteMarkup)));
            entries.Add((topic.Id + "/viewpoint.bcfv", XmlBytes.Of(topic.WriteViewpoint)));
        }
        return FixedZip.Of(entries.Select(e => (e.Item1, (Action<Stream>)(to => to.Write(e.Item2)))));
    }

    private static void WriteExtensions(XmlWriter xml, ExchangeInput input)
    {
        xml.WriteStartElement("Extensions");
        List(xml, "TopicTypes", "TopicType", input.Report.Findings.Select(f => f.Code));
        List(xml, "TopicStatuses", "TopicStatus", input.Report.Findings.Select(BcfTopic.Status));
        List(xml, "Priorities", "Priority", input.Report.Findings.Select(f => ResultWords.Of(f.Severity)));
        List(xml, "TopicLabels", "TopicLabel", input.Report.Findings.Select(f => BcfTopic.Label(f)));
        List(xml, "Users", "User", [BcfTopic.Author(input)]);
        xml.WriteEndElement();
    }

    private static void List(XmlWriter xml, string list, string item, IEnumerable<string> texts)
    {
        xml.WriteStartElement(list);
        foreach (string text in texts.Where(t => t.Length > 0).Distinct().Order(StringComparer.Ordinal))
            xml.WriteElementString(item, XmlBytes.Clean(text));
        xml.WriteEndElement();
    }

    private static void WriteProject(XmlWriter xml, ExchangeInput input, StableId ids)
    {
        xml.WriteStartElement("ProjectInfo");
        xml.WriteStartElement("Project");
        xml.WriteAttributeString("ProjectId", ids.Of("project").ToString());
        string name = XmlBytes.Clean($"{input.Project.Info.Number} {input.Project.Info.Title}").Trim();
        if (name.Length > 0)
            xml.WriteElementString("Name", name);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }
}
