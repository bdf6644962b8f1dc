using PdfSharp.Pdf;
using SheetGen.Drawing.Primitives;
using SheetGen.Drawing.Sheets;

namespace SheetGen.Writers.Pdf;

/// <summary>Layers that a viewer can switch: one optional content group a layer, one form of a page for each.</summary>
internal static class PdfLayers
{
    /// <param name="order">Layers of the forms in the order in which they were made.</param>
    public static void Attach(PdfDocument document, SheetSet set, IReadOnlyList<LayerRole> order)
    {
        PdfDictionary[] forms =
            [.. document.Internals.GetAllObjects().OfType<PdfDictionary>().Where(d => d.Elements.GetName("/Subtype") == "/Form")];
        if (forms.Length != order.Count)
            throw new InvalidOperationException("forms and layers differ in number");
        var groups = new Dictionary<LayerRole, PdfDictionary>();
        var all = new PdfArray(document);
        foreach (LayerRole layer in order.Distinct().Order())
        {
            var group = new PdfDictionary(document);
            group.Elements["/Type"] = new PdfName("/OCG");
            group.Elements["/Name"] = new PdfString(set.LayerOf(layer).Name);
            document.Internals.AddObject(group);
            groups[layer] = group;
            all.Elements.Add(group.Reference!);
        }
        for (int i = 0; i < forms.Length; i++)
            forms[i].Elements["/OC"] = groups[order[i]].Reference;
        var view = new PdfDictionary(document);
        view.Elements["/Order"] = all.Clone();
        view.Elements["/ON"] = all.Clone();
        var properties = new PdfDictionary(document);
        properties.Elements["/OCGs"] = all;
        properties.Elements["/D"] = view;
        document.Internals.Catalog.Elements["/OCProperties"] = properties;
    }
}
