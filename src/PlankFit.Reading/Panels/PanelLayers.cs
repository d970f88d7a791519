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
    /// <returns>Elsewhere: the layers of planks that do not lie on the bottom, each with its panel.</returns>
    public static (
        PanelDraft Bottom,
        ImmutableArray<PanelDraft> Others,
        ImmutableDictionary<string, string> Elsewhere
    ) Sorted(
        PanelBinding panels,
        ImmutableArray<TableReader> tables,
        ImmutableArray<LayerSpec> layers,
        Func<string, EndRules> endsOf,
        JobFaults faults
    )
    {
        string?[] of = [.. tables.Select(t => Named(t, panels))];
        PanelDraft Draft(Panel panel, EndRules rules, Place at)
        {
            int[] mine = [.. Enumerable.Range(0, of.Length).Where(i => of[i] == panel.Name)];
            return new(
                panel,
                [.. mine.Select(i => layers[i])],
                rules,
                [.. mine.Select(i => tables[i].PlaceOf(LayerKeys.Width))]
            )
            {
                At = at,
            };
        }

        PanelDraft bottom = Draft(Panel.Bottom("", "", []), EndRules.Default, default);
        var ends = panels.Named.ToDictionary(n => n.Name, n => endsOf(n.Name));
        ImmutableArray<PanelDraft> others =
        [
            .. panels.Panels.Select(p =>
                Draft(p, ends[p.Name], panels.Named.First(n => n.Name == p.Name).At)
            ),
        ];
        foreach ((string name, Place at) in panels.Named)
        {
            if (
                !Enumerable
                    .Range(0, of.Length)
                    .Any(i => of[i] == name && layers[i] is PlankLayerSpec)
            )
            {
                faults.Missing(
                    at,
                    $"[[panel]] {name} has no layer of planks: give a [[layer]] panel = {Quoted.Of(name)}, or leave the panel out"
                );
            }
        }

        ImmutableDictionary<string, string>.Builder elsewhere = ImmutableDictionary.CreateBuilder<
            string,
            string
        >();
        for (int i = 0; i < of.Length; i++)
        {
            if (of[i] is { } panel && panel != Panel.BottomName && layers[i] is PlankLayerSpec)
            {
                elsewhere[layers[i].Name] = panel;
            }
        }

        return (bottom, others, elsewhere.ToImmutable());
    }

    /// <summary>The panel that a layer names, the bottom where it names none.</summary>
    private static string? Named(TableReader table, PanelBinding panels)
    {
        if (!table.Has(LayerKeys.Panel))
        {
            return Panel.BottomName;
        }

        if (table.Text(LayerKeys.Panel) is not { } name)
        {
            return null;
        }

        if (name == Panel.BottomName || panels.Called.Contains(name))
        {
            return name;
        }

        if (panels.Nameless)
        {
            return null;
        }

        string[] known = [Panel.BottomName, .. panels.Named.Select(p => p.Name)];
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
