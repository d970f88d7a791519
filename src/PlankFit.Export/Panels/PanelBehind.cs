using System.Collections.Immutable;
using PlankFit.Export.Framing;
using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Panels;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Panels;

/// <summary>Timber behind a panel that is on both sides, since a sheet of starboard is read for port in the mirror, where it comes to lie on the panel laid flat: square through the skins, as a fastening goes.</summary>
/// <param name="Covers">Its strips, plank by plank of the innermost layer, true size.</param>
/// <param name="Edges">The two edges of each.</param>
internal sealed record PanelBehind(
    ImmutableArray<ImmutableArray<Vec2>> Covers,
    ImmutableArray<ImmutableArray<Vec2>> Edges
)
{
    private const double Grey = 0.88;

    /// <summary>Some timber is on one side alone, and is not among it.</summary>
    public bool LeavesOut { get; init; }

    /// <summary>; grey: timber behind; and what is left out of it. Nothing where there is none.</summary>
    /// <param name="drawn">How it is drawn.</param>
    public string Words(string drawn) =>
        (Edges.IsEmpty ? "" : $"; {drawn}: timber behind")
        + (LeavesOut ? "; timber behind on one side alone is not drawn" : "");

    public static PanelBehind Of(BottomPlan plan, PanelPlan panel)
    {
        SurfacePatch patch = panel.Flat.Patch;
        (Plank Plank, FramingCrossing Timber)[] crossed =
        [
            .. from plank in plan.PlankLayers.FirstOrDefault()?.Starboard ?? []
            from timber in FramingWords.Crossings(plan, plank)
            where timber.Of.Kind != FramingKind.Open && timber.Of.Only is null
            select (plank, timber),
        ];

        // A layer's faces and the table's surface have the same u and v along one normal.
        ImmutableArray<Vec2> Flat(Plank plank, IEnumerable<Vec2> line) =>
            [
                .. line.Select(p =>
                {
                    Uv on = plank.Map.On(p);
                    double u = Math.Clamp(on.U, patch.UFrom, patch.UTo);
                    return panel.Flat.Map.At(u, Math.Clamp(on.V, patch.Lower(u), patch.Upper(u)));
                }),
            ];

        return new(
            [
                .. crossed
                    .Where(c => c.Timber.Cover.Length > 2)
                    .Select(c => Flat(c.Plank, Thinning.Closed(c.Timber.Cover, 1))),
            ],
            [
                .. crossed
                    .SelectMany(c =>
                        new[] { c.Timber.OneEdge, c.Timber.OtherEdge }.Select(e =>
                            (c.Plank, Edge: e)
                        )
                    )
                    .Where(e => e.Edge.Length > 1)
                    .Select(e => Flat(e.Plank, Thinning.Open(e.Edge, 1))),
            ]
        )
        {
            LeavesOut =
                plan.PlankLayers.FirstOrDefault() is { } inner
                && inner
                    .Starboard.Concat(inner.Port)
                    .SelectMany(p => FramingWords.Crossings(plan, p))
                    .Any(c => c.Of.Kind != FramingKind.Open && c.Of.Only is not null),
        };
    }

    /// <summary>Grey, before all else.</summary>
    public void Shade(SheetCanvas pad, Placing at)
    {
        foreach (ImmutableArray<Vec2> cover in Covers)
        {
            pad.Closed(at.Of(cover), Pens.None, Layers.Behind, Grey);
        }
    }

    /// <summary>Its edges alone, where grey says something else.</summary>
    public void Outline(SheetCanvas pad, Placing at)
    {
        foreach (ImmutableArray<Vec2> edge in Edges)
        {
            pad.Open(at.Of(edge), Pens.BehindEdge, Layers.Behind);
        }
    }
}
