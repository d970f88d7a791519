using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Panels;

/// <summary>Each [[layer]] to the panel that it names.</summary>
internal static class PanelLayers
{
    /// <param name="layers">Of <paramref name="tables"/>, in their order.</param>
    /// <param name="endsOf">The rules for a panel's ends.</param>
    public static (PanelDraft Bottom, ImmutableArray<PanelDraft> Others) Sorted(
        ImmutableArray<Panel> panels,
        ImmutableArray<TableReader> tables,
        ImmutableArray<LayerSpec> layers,
        Func<Panel, EndRules> endsOf,
        TableReader root
    )
    {
        string?[] of = [.. tables.Select(t => Named(t, panels))];
        PanelDraft Draft(Panel panel, EndRules ends)
        {
            int[] mine = [.. Enumerable.Range(0, of.Length).Where(i => of[i] == panel.Name)];
            return new(
                panel,
                [.. mine.Select(i => layers[i])],
                ends,
                [.. mine.Select(i => tables[i].PlaceOf(LayerKeys.Width))]
            );
        }

        PanelDraft bottom = Draft(Panel.Bottom("", "", []), EndRules.Default);
        ImmutableArray<PanelDraft> others = [.. panels.Select(p => Draft(p, endsOf(p)))];
        foreach (PanelDraft bare in others.Where(o => !o.Layers.Any(l => l is PlankLayerSpec)))
        {
            root.Faults.Missing(
                root.At,
                $"[[panel]] {bare.Panel.Name} has no layer of planks: give a [[layer]] panel = {Quoted.Of(bare.Panel.Name)}, or leave the panel out"
            );
        }

        return (bottom, others);
    }

    /// <summary>The panel that a layer names, the bottom where it names none.</summary>
    private static string? Named(TableReader table, ImmutableArray<Panel> panels)
    {
        if (!table.Has(LayerKeys.Panel))
        {
            return Panel.BottomName;
        }

        if (table.Text(LayerKeys.Panel) is not { } name)
        {
            return null;
        }

        string[] known = [Panel.BottomName, .. panels.Select(p => p.Name)];
        if (known.Contains(name))
        {
            return name;
        }

        string? near = NearestName.Of(name, known);
        table.Wrong(
            LayerKeys.Panel,
            "no [[panel]] has this name"
                + (near is null ? "" : $" (did you mean {Quoted.Of(near)}?)")
                + $"; there are {string.Join(", ", known)}"
        );
        return null;
    }
}
