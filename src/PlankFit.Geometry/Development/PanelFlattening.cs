using PlankFit.Geometry.Primitives;

namespace PlankFit.Geometry.Development;

/// <summary>What is asked of a flat panel.</summary>
/// <param name="PointMm">Edges nearer to each other than this at an end of the panel meet there in a point.</param>
/// <param name="OutlineMm">The most that a chord of the outline may lie from its curve.</param>
public sealed record PanelOptions(
    DevelopmentTolerances Tolerances,
    LeastStrainOptions LeastStrain,
    double PointMm = 0.01,
    double OutlineMm = 0.002
)
{
    public static readonly PanelOptions Usual = new(new(), new());
}

/// <summary>
/// Lays a panel flat: by its rulings where it is developable within the tolerances, by least strain where it is not.
/// </summary>
public static class PanelFlattening
{
    public static FlatPanel Flatten(SurfacePatch patch, PanelOptions options)
    {
        RulingSet rulings = Rulings.Find(patch, options.PointMm);
        // The rulings' verdict first, at no cost; the sum of Gauss curvature comes with the sheet.
        DevelopmentVerdict verdict = DevelopmentTest.Judge(patch, rulings, options.Tolerances, 0);
        return verdict.Developable
            ? ByRulings(patch, rulings, options)
            : ByLeastStrain(patch, rulings, options);
    }

    /// <summary>Laid flat by the given rulings, whatever the verdict; every ruling must have been found.</summary>
    public static FlatPanel ByRulings(SurfacePatch patch, RulingSet rulings, PanelOptions options)
    {
        IFlatMap map = Framed(patch, new RulingMap(patch, rulings));
        (double area, double gauss) = Sums(patch, options);
        StrainField strain = Strain(patch, map, options);
        double worst = Math.Abs(strain.Worst.Leading);
        double diagonal = map.At(patch.UFrom, patch.Lower(patch.UFrom))
            .ChordTo(map.At(patch.UTo, patch.Upper(patch.UTo)));
        return new(
            patch,
            DevelopmentTest.Judge(patch, rulings, options.Tolerances, gauss),
            FlatteningMethod.ByRulings,
            map,
            Border(patch, map, options),
            strain,
            area,
            new(0.5 * diagonal * worst, worst, true)
        );
    }

    /// <summary>Laid flat by least strain, whatever the verdict.</summary>
    public static FlatPanel ByLeastStrain(
        SurfacePatch patch,
        RulingSet rulings,
        PanelOptions options
    )
    {
        LeastStrain.Result coarse = LeastStrain.Coarse(patch, options.LeastStrain, options.PointMm);
        LeastStrain.Result fine = LeastStrain.Fine(
            patch,
            options.LeastStrain,
            options.PointMm,
            coarse.Map
        );
        IFlatMap before = Framed(patch, coarse.Map),
            map = Framed(patch, fine.Map);
        StrainField strain = Strain(patch, map, options),
            strainBefore = Strain(patch, before, options);
        double moved = 0;
        for (int k = 0; k < strain.Samples.Length; k++)
        {
            moved = Math.Max(moved, strain.Samples[k].Flat.ChordTo(strainBefore.Samples[k].Flat));
        }

        return new(
            patch,
            DevelopmentTest.Judge(patch, rulings, options.Tolerances, fine.GaussTurn),
            FlatteningMethod.ByLeastStrain,
            map,
            Border(patch, map, options),
            strain,
            fine.AreaMm2,
            new(
                moved,
                Math.Abs(Math.Abs(strain.Worst.Leading) - Math.Abs(strainBefore.Worst.Leading)),
                fine.Settled
            )
        );
    }

    private static (double Area, double Gauss) Sums(SurfacePatch patch, PanelOptions options)
    {
        MembraneSheet sheet = new(
            patch,
            new(options.LeastStrain.SpansAlong),
            new(options.LeastStrain.SpansAcross),
            options.LeastStrain.Poisson
        );
        return (sheet.AreaMm2, sheet.GaussTurn);
    }

    private static FlatBorder Border(SurfacePatch patch, IFlatMap map, PanelOptions options) =>
        new(
            FlatLines.Outline(patch, map, options.OutlineMm, options.PointMm),
            FlatLines.Edge(patch, map, patch.Lower),
            FlatLines.Edge(patch, map, patch.Upper)
        );

    private static StrainField Strain(SurfacePatch patch, IFlatMap map, PanelOptions options) =>
        StrainField.Of(
            patch,
            map,
            2 * options.LeastStrain.SpansAlong,
            2 * options.LeastStrain.SpansAcross,
            options.PointMm
        );

    private static FramedMap Framed(SurfacePatch patch, IFlatMap map)
    {
        Vec2 from = map.At(patch.UFrom, patch.Lower(patch.UFrom)),
            to = map.At(patch.UTo, patch.Lower(patch.UTo));
        double middle = 0.5 * (patch.UFrom + patch.UTo);
        return new(map, FlatFrame.Above(from, to, map.At(middle, patch.Upper(middle))));
    }
}
