using MathNet.Numerics.LinearAlgebra;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Trust;

namespace PlankFit.Tests.Planking.Trust;

/// <summary>The covariance of a table's errors: uniform last units by JCGM 100:2008, 4.3.7; causes that move cells together by their products; swellings by their own law.</summary>
public sealed class TablePriorTests
{
    private static readonly TableCells Cells = TableCells.Of(PrismTable.Job);

    /// <summary>Everything true but what is set.</summary>
    private static readonly TrustSpec Nothing = new()
    {
        ReadToMm = 0,
        FramesMadeWithinMm = 0,
        KeelMadeWithinMm = 0,
        Standing = new(0, 0, 0, 0),
        Bends = new(0, 0, 0, 0.2),
    };

    [Theory]
    [InlineData(25.4 / 16, 0, 0.458272)]
    [InlineData(0, 25.4 / 32, 0.458272)]
    [InlineData(25.4 / 16, 25.4 / 32, 0.648094)]
    [InlineData(1, 0, 0.288675)]
    public void ReadingAndLoftingAreUniform(double unit, double lofted, double sigma)
    {
        Matrix<double> s = TablePrior.Of(
            Nothing with
            {
                ReadToMm = unit,
                LoftedWithinMm = lofted,
            },
            Cells
        );
        int cell = At("chine", 3, CellKind.Height);
        Assert.Equal(sigma, Math.Sqrt(s[cell, cell]), 1e-6);
        Assert.Equal(0, s[cell, At("chine", 3, CellKind.HalfBreadth)]);
        Assert.Equal(0, s[At("keel", 3, CellKind.Position), At("keel", 3, CellKind.Position)]);
    }

    [Fact]
    public void MakingIsByItselfAndTheKeelsOwn()
    {
        TrustSpec made = Nothing with { FramesMadeWithinMm = 1.96, KeelMadeWithinMm = 3.92 };
        Matrix<double> s = TablePrior.Of(made, Cells);
        Assert.Equal(1, s[At("chine", 2, CellKind.Height), At("chine", 2, CellKind.Height)], 1e-12);
        Assert.Equal(4, s[At("keel", 2, CellKind.Height), At("keel", 2, CellKind.Height)], 1e-12);
    }

    /// <summary>A frame heeled 2 mm in a metre about the keel's edge: its chine 0.64 inboard and 1.92 up.</summary>
    [Fact]
    public void AHeelTurnsTheFrameAboutTheKeelsEdge()
    {
        SharedCause heel = Cause(CauseKind.Heel, 5);
        Vector<double> moved = 2 * heel.Effect;
        Assert.Equal(-0.64, moved[At("chine", 5, CellKind.HalfBreadth)], 1e-12);
        Assert.Equal(1.92, moved[At("chine", 5, CellKind.Height)], 1e-12);
        Assert.Equal(2, moved.Count(m => m != 0));
    }

    [Theory]
    [InlineData(CauseKind.Athwart, CellKind.HalfBreadth)]
    [InlineData(CauseKind.Up, CellKind.Height)]
    public void AFrameCarriesItsChineAndNotTheKeelsEdge(CauseKind kind, CellKind cell)
    {
        SharedCause cause = Cause(kind, 5);
        Assert.Equal(1, cause.Effect[At("chine", 5, cell)]);
        Assert.Equal(1, cause.Effect.L1Norm());
    }

    [Fact]
    public void CausesStandBesideTheDiagonal()
    {
        TrustSpec spec = Nothing with { Standing = new(0, 0, 0, 1.96) };
        Matrix<double> s = TablePrior.Of(spec, Cells);
        int b = At("chine", 4, CellKind.HalfBreadth),
            h = At("chine", 4, CellKind.Height);
        Assert.Equal(-0.32 * 0.96, s[b, h], 1e-12);
        Assert.Equal(0.32 * 0.32, s[b, b], 1e-12);
        Assert.Equal(0, s[b, At("chine", 5, CellKind.Height)]);
    }

    [Fact]
    public void SwellingsFallOffAlongTheLine()
    {
        TrustSpec spec = Nothing with { Bends = new(1.96, 3.92, 0, 0.2) };
        Matrix<double> s = TablePrior.Of(spec, Cells);
        Assert.Equal(
            Math.Exp(-0.5),
            s[At("chine", 2, CellKind.HalfBreadth), At("chine", 4, CellKind.HalfBreadth)],
            1e-12
        );
        Assert.Equal(
            4 * Math.Exp(-0.125),
            s[At("keel", 2, CellKind.HalfBreadth), At("keel", 3, CellKind.HalfBreadth)],
            1e-12
        );
        Assert.Equal(
            0,
            s[At("chine", 2, CellKind.HalfBreadth), At("keel", 2, CellKind.HalfBreadth)]
        );
    }

    [Fact]
    public void AllOfItIsSymmetricAndPositive()
    {
        Matrix<double> s = TablePrior.Of(TrustSpec.Default, Cells);
        Assert.Equal(55, Cells.Count);
        Assert.Equal(0, (s - s.Transpose()).L2Norm(), 1e-12);
        Assert.True(s.Evd().EigenValues.Real().Minimum() > 0);
    }

    /// <summary>Only what is asked for moves, by as much; nothing at all leaves the table as it is.</summary>
    [Fact]
    public void ATableMovesCellByCell()
    {
        Vector<double> p = Vector<double>.Build.Dense(Cells.Count);
        Assert.True(SameValue.Are(Cells.Table, Cells.Moved(p)));
        p[At("chine", 3, CellKind.HalfBreadth)] = 1.5;
        p[At("keel", 4, CellKind.Height)] = -2;
        p[At("keel", 6, CellKind.Position)] = 3;
        OffsetTable moved = Cells.Moved(p);
        Assert.Equal(1001.5, moved.Named("chine").HalfBreadthsMm[3]);
        Assert.Equal(18, moved.Named("keel").HeightsMm[4]);
        Assert.Equal(6003, moved.Stations[6].PositionMm);
        Assert.Equal(1000, moved.Named("chine").HalfBreadthsMm[2]);
    }

    [Fact]
    public void KeelAndChineInAPointAreOneCell()
    {
        PlankingJob job = PrismTable.Job;
        OffsetTable table = job.Offsets;
        OffsetLine chine = table.Named("chine");
        table = table with
        {
            Lines =
            [
                table.Named("keel") with
                {
                    HalfBreadthsMm = table.Named("keel").HalfBreadthsMm.SetItem(0, 0),
                },
                chine with
                {
                    HalfBreadthsMm = chine.HalfBreadthsMm.SetItem(0, 0),
                    HeightsMm = chine.HeightsMm.SetItem(0, 20),
                },
            ],
        };
        var cells = TableCells.Of(job with { Offsets = table });
        Assert.Null(cells.IndexOf("keel", 0, CellKind.HalfBreadth));
        int height = cells.IndexOf("keel", 0, CellKind.Height)!.Value;
        Assert.Equal(height, cells.IndexOf("chine", 0, CellKind.Height));
        Vector<double> p = Vector<double>.Build.Dense(cells.Count);
        p[height] = 2;
        OffsetTable moved = cells.Moved(p);
        Assert.Equal(22, moved.Named("keel").HeightsMm[0]);
        Assert.Equal(22, moved.Named("chine").HeightsMm[0]);
    }

    private static SharedCause Cause(CauseKind kind, int station) =>
        SharedCause
            .Of(TrustSpec.Default, Cells)
            .Single(c => c.Kind == kind && c.Station == station);

    private static int At(string line, int station, CellKind kind) =>
        Cells.IndexOf(line, station, kind)!.Value;
}
