using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Structure.Laminates;

namespace PlankFit.Planking.Structure;

/// <summary>The stack as planned and what it is set beside: without its cloths one by one and all, and the same mass in wood alone.</summary>
internal static class LaidUps
{
    /// <param name="angles">Of the layers of planks, from the inside out.</param>
    public static ImmutableArray<LaidUp> Of(
        StructureGround ground,
        PlyMaker maker,
        ImmutableArray<double> angles
    )
    {
        List<(LayerPlan Layer, ImmutableArray<Ply> Plies)> stack = [];
        int skin = 0;
        foreach (LayerPlan layer in ground.Planked.Layers)
        {
            stack.Add(
                layer is PlankLayerPlan planks
                    ? (layer, [Wood(ground, maker, planks, angles[skin++])])
                    : (layer, Cloth(ground, maker, layer.Spec))
            );
        }

        Laminate whole = Laid(stack.SelectMany(s => s.Plies));
        ImmutableArray<LaidUp>.Builder lays = ImmutableArray.CreateBuilder<LaidUp>();
        lays.Add(new("as planned", whole));
        string[] cloths =
        [
            .. stack
                .Where(s => s.Layer is ClothLayerPlan && !s.Plies.IsEmpty)
                .Select(s => s.Layer.Spec.Name),
        ];
        if (cloths.Length > 1)
        {
            lays.AddRange(
                cloths.Select(name => new LaidUp(
                    $"without {name}",
                    Laid(stack.Where(s => s.Layer.Spec.Name != name).SelectMany(s => s.Plies))
                ))
            );
        }

        if (cloths.Length > 0)
        {
            lays.Add(
                new(
                    "without any cloth",
                    Laid(stack.Where(s => s.Layer is PlankLayerPlan).SelectMany(s => s.Plies))
                )
            );
        }

        Ply[] skins = [.. stack.Where(s => s.Layer is PlankLayerPlan).SelectMany(s => s.Plies)];
        double wood = skins.Sum(p => p.KgPerM3 * p.ThicknessMm);
        if (wood > 0 && whole.KgPerM2 > 0)
        {
            double more = 1000 * whole.KgPerM2 / wood;
            // Without cloth it is the stack as planned once more.
            if (cloths.Length > 0)
            {
                lays.Add(
                    new(
                        "the same mass in the same skins of wood, no cloth",
                        Laid(skins.Select(p => p with { ThicknessMm = more * p.ThicknessMm }))
                    )
                );
            }

            lays.Add(
                new(
                    "the same mass in one skin of wood, its grain along the hull",
                    Laid([
                        skins[0] with
                        {
                            Degrees = 0,
                            ThicknessMm = 1000 * whole.KgPerM2 / skins[0].KgPerM3,
                        },
                    ])
                )
            );
        }

        return lays.ToImmutable();
    }

    /// <param name="angles">Of the layers of planks, from the inside out.</param>
    public static ImmutableArray<BoardStrip> Boards(
        StructureGround ground,
        PlyMaker maker,
        ImmutableArray<double> angles
    ) =>
        [
            .. ground.Planked.PlankLayers.Select(
                (l, i) => new BoardStrip(l.Planks.Name, Wood(ground, maker, l, angles[i]))
            ),
        ];

    private static Laminate Laid(IEnumerable<Ply> plies) => new([.. plies]);

    private static Ply Wood(
        StructureGround ground,
        PlyMaker maker,
        PlankLayerPlan layer,
        double degrees
    ) =>
        new(
            maker.Of(ground.WoodOf(layer)!)!,
            layer.Planks.ThicknessMm,
            degrees,
            ground.Timber?.Of(layer)?.KgPerCubicMetre ?? 0
        );

    /// <summary>None where the job does not say what it is: its thickness is then counted for nothing, and that is told.</summary>
    private static ImmutableArray<Ply> Cloth(
        StructureGround ground,
        PlyMaker maker,
        LayerSpec layer
    ) =>
        ground.LiesAs(layer.Name) is { } lies
            ? maker.Of(lies.Cloth, layer.ThicknessMm, ClothLies.Of(lies))
            : [];
}
