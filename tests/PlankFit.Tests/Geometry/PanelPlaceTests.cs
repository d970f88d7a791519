using PlankFit.Geometry.Development;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Panels wherever they lie on their surface and however small they are.</summary>
public sealed class PanelPlaceTests
{
    /// <summary>
    /// Panels whose edges have nothing to say beyond their ends lie as those do that begin at nought: a cylinder's, where rulings are sought, and a plane's,
    /// where any serves.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void EdgesAreAskedOnlyWhereThePanelIs(bool bent)
    {
        ISurface surface = bent
            ? new SwappedSurface(new CylinderSurface(2000))
            : new PlaneSurface(Vec3.Zero, new(2000, 0, 0), Vec3.UnitY);
        FlatPanel Panel(double from)
        {
            Func<double, double> Edge(double mm) =>
                u =>
                    u >= from && u <= from + 0.8
                        ? mm + (40 * (u - from))
                        : throw new ArgumentOutOfRangeException(nameof(u), u, "off the panel");
            return PanelFlattening.Flatten(
                new(surface, from, from + 0.8, Edge(0), Edge(700)),
                PanelOptions.Usual
            );
        }

        FlatPanel here = Panel(0),
            there = Panel(2.6);
        Assert.Equal(FlatteningMethod.ByRulings, there.Method);
        Assert.Equal(here.Outline.Length, there.Outline.Length);
        for (int k = 0; k < here.Outline.Length; k++)
        {
            Assert.InRange(here.Outline[k].ChordTo(there.Outline[k]), 0, 1e-6);
        }
    }

    /// <summary>Which hand a panel has is a matter of its sides, and not of how long its parameters' units are.</summary>
    [Theory]
    [InlineData(1, 0.001)]
    [InlineData(1, 1)]
    [InlineData(1, 2000)]
    [InlineData(-1, 0.001)]
    [InlineData(-1, 2000)]
    public void TheHandIsThatOfTheOuterSide(int side, double unit) =>
        Assert.Equal(
            side,
            new SurfacePatch(
                new PlaneSurface(Vec3.Zero, unit * new Vec3(1, 0.2, 0), Vec3.UnitY, side),
                0,
                500 / unit,
                _ => 0,
                _ => 300
            ).Handedness
        );

    /// <summary>Another developable hangs between the edges where every ruling was found and none is warped, though the surface is elsewhere.</summary>
    [Theory]
    [InlineData(false, 1, 0.1, true)]
    [InlineData(false, 0.99, 0.1, false)]
    [InlineData(false, 1, 0.3, false)]
    [InlineData(true, 1, 0.1, false)]
    public void AnotherDevelopableNeedsAllItsRulings(
        bool developable,
        double found,
        double warp,
        bool another
    ) =>
        Assert.Equal(
            another,
            new DevelopmentVerdict(
                developable,
                new(found, warp),
                new(3, default),
                new(5, 0),
                0,
                new()
            ).AnotherDevelopableFitsTheEdges
        );

    /// <summary>A scrap of a plane, half a millimetre by a third, on either side: its outline runs counter-clockwise like any other.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void TheOutlineOfAScrapRunsCounterClockwise(int side)
    {
        FlatPanel scrap = PanelFlattening.Flatten(
            new(
                new PlaneSurface(new(5, 6, 7), new(1, 0, 0), new(0, 1, 0), side),
                0,
                0.5,
                _ => 0,
                _ => 1 / 3.0
            ),
            PanelOptions.Usual
        );
        Assert.Equal(0.5 / 3, FlatPolygon.Area(scrap.Outline), 1e-6);
    }

    /// <summary>
    /// Where a panel ends in a point its last samples of strain stand a fiftieth of a column inside, on the section there; elsewhere samples stand on the grid.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void StrainAtAPointIsSampledJustInside(bool aft)
    {
        FlatPanel panel = PanelFlattening.Flatten(
            new(new HyparSurface(1e-4, 0.1, -1), 0, 4000, _ => 0, u => 0.25 * (aft ? 4000 - u : u)),
            PanelOptions.Usual with
            {
                LeastStrain = new(12, 4),
            }
        );
        Assert.Equal(FlatteningMethod.ByLeastStrain, panel.Method);
        Assert.Equal((24, 8), (panel.Strain.Columns, panel.Strain.Rows));
        int columns = panel.Strain.Columns;
        double column = 4000.0 / columns;
        for (int j = 0; j <= panel.Strain.Rows; j++)
        {
            double across = j / (double)panel.Strain.Rows;
            (StrainSample point, StrainSample broad) = aft
                ? (panel.Strain[columns, j], panel.Strain[0, j])
                : (panel.Strain[0, j], panel.Strain[columns, j]);
            Assert.Equal(aft ? 4000 - (0.02 * column) : 0.02 * column, point.U, 1e-9);
            Assert.Equal(across * 0.25 * 0.02 * column, point.V, 1e-9);
            Assert.Equal(aft ? 0 : 4000, broad.U, 1e-9);
            Assert.Equal(across * 1000, broad.V, 1e-9);
            Assert.Equal(column, panel.Strain[1, j].U, 1e-9);
        }
    }
}
