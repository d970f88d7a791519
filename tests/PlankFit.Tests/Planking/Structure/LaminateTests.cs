using System.Collections.Immutable;
using PlankFit.Planking.Structure.Laminates;

namespace PlankFit.Tests.Planking.Structure;

/// <summary>Classical laminate theory held to values worked out elsewhere, to published beams, and to laws of turning.</summary>
public sealed class LaminateTests
{
    private static readonly PlyMaterial Wood = new(9000, 600, 600, 0.35),
        Cloth = new(24000, 6000, 2200, 0.30);

    private static Ply W(double t, double degrees) => new(Wood, t, degrees, 520);

    private static Ply C(double degrees) => new(Cloth, 0.5, degrees, 1583.3);

    private static readonly ImmutableArray<Ply> Case20 =
    [
        W(9, 45),
        C(45),
        C(-45),
        W(9, -45),
        C(45),
        C(-45),
    ];

    [Fact]
    public void APlyTurnedBy45Degrees()
    {
        var one = new Laminate([new(Cloth, 1, 45)]);
        Assert.Equal(10793.35038, one.A(1, 1), 5e-5 * 2);
        Assert.Equal(6393.35038, one.A(1, 2), 1e-4);
        Assert.Equal(4603.58056, one.A(1, 6), 1e-4);
        Assert.Equal(6751.91816, one.A(6, 6), 1e-4);
        var wood = new Laminate([new(Wood, 1, 45)]);
        Assert.Equal(3125.62595, wood.A(1, 1), 1e-5);
        Assert.Equal(1925.62595, wood.A(1, 2), 1e-5);
        Assert.Equal(2117.29121, wood.A(1, 6), 1e-5);
        Assert.Equal(2117.29121, wood.A(2, 6), 1e-5);
        Assert.Equal(2313.89682, wood.A(6, 6), 1e-5);
        Assert.Equal(1188.1188, wood.ModulusAlong, 5e-5);
        Assert.Equal(1188.1188, Wood.ModulusAt(45), 5e-5);
    }

    [Fact]
    public void TwoSkinsWithClothBetweenAndOutside()
    {
        var whole = new Laminate(Case20);
        Near(77847.9678, whole.A(1, 1), 1e-4);
        Near(47447.9678, whole.A(1, 2), 1e-4);
        Near(55153.9792, whole.A(6, 6), 1e-4);
        Near(0, whole.A(1, 6), 1e-6);
        Near(69009.520, whole.B(1, 1), 1e-3);
        Near(40209.520, whole.B(1, 2), 1e-3);
        Near(-192857.999, whole.B(1, 6), 1e-3);
        Near(39942.192, whole.B(6, 6), 1e-3);
        Near(2778957.646, whole.D(1, 1), 1e-3);
        Near(1688824.313, whole.D(1, 2), 1e-3);
        Near(169840.097, whole.D(1, 6), 1e-3);
        Near(1944978.484, whole.D(6, 6), 1e-3);
        Near(whole.D(1, 1), whole.D(2, 2), 1e-6);
        Near(whole.D(1, 6), whole.D(2, 6), 1e-6);
        Near(1521876.893, whole.FreeStripAlong, 1e-3);
        Near(1521876.893, whole.FreeStripAcross, 1e-3);
        Near(1572854.977, whole.TwistHeldAlong, 1e-3);
        Near(2043412.759, whole.BetweenStringers, 1e-3);
        var mirrored = new Laminate([W(9, -45), C(45), C(-45), W(9, 45), C(45), C(-45)]);
        Near(-211272.322, mirrored.D(1, 6), 1e-3);
        Near(1525220.114, mirrored.FreeStripAlong, 1e-3);
        Near(2075223.369, mirrored.BetweenStringers, 1e-3);
    }

    [Fact]
    public void WithAndWithoutCloth()
    {
        Strip(747981.292, 812875.317, W(9, 45), W(9, -45));
        Strip(914286.382, 1027896.143, W(9, 45), C(45), C(-45), W(9, -45));
        Strip(922222.807, 1046020.182, W(9, 45), C(-45), C(45), W(9, -45));
        Strip(1278729.975, 1721406.346, W(9, 45), W(9, -45), C(45), C(-45));
        Strip(
            2398641.081,
            3339652.891,
            C(45),
            C(-45),
            W(9, 45),
            C(45),
            C(-45),
            W(9, -45),
            C(45),
            C(-45)
        );

        static void Strip(double free, double between, params Ply[] plies)
        {
            var laminate = new Laminate([.. plies]);
            Near(free, laminate.FreeStripAlong, 1e-3);
            Near(between, laminate.BetweenStringers, 1e-3);
        }
    }

    [Fact]
    public void MassCentreAndTheSameMassOfWood()
    {
        var whole = new Laminate(Case20);
        Near(12.5266, whole.KgPerM2, 5e-5);
        Near(10.76395, whole.CentreFromInsideMm, 5e-6);
        double same = whole.KgPerM2 / 0.520;
        Near(24.08962, same, 5e-6);
        var two = new Laminate([W(same / 2, 45), W(same / 2, -45)]);
        Near(1792927.872, two.FreeStripAlong, 5e-3);
        Near(1948480.301, two.BetweenStringers, 5e-3);
        var solid = new Laminate([W(same, 0)]);
        Near(10484575.7, solid.FreeStripAlong, 0.1);
        Near(698971.7, solid.FreeStripAcross, 0.1);
    }

    [Fact]
    public void CouponsAndPanels()
    {
        var whole = new Laminate(Case20);
        Near(3.50444, Coupon(whole.FreeStripAlong), 5e-6);
        Near(3.39086, Coupon(whole.TwistHeldAlong), 5e-6);
        Near(0.07273, Deflections.CouponShearMm(200, 400, 50, 20, 330), 5e-6);
        Near(7.13030, Coupon(747981.292), 5e-6);
        Near(5.83333, Coupon(914286.382), 5e-6);
        Near(0.09956, Deflections.HeldPanelMm(0.020, 250, whole.BetweenStringers), 5e-6);
        Near(0.25029, Deflections.HeldPanelMm(0.020, 250, 812875.317), 5e-6);
        Near(0.19793 * 5, Deflections.RestingPanelMm(0.020, 250, 1027896.143), 3e-5);
        Near(0.10441, Deflections.HeldPanelMm(0.020, 250, 1948480.301), 5e-6);

        static double Coupon(double stiffness) => Deflections.CouponMm(200, 400, 50, stiffness);
    }

    [Fact]
    public void SymmetricAndUnsymmetricWood()
    {
        var symmetric = new Laminate([W(3, 45), W(3, -45), W(3, -45), W(3, 45)]);
        Near(1939.2923, symmetric.ModulusAlong, 5e-5);
        Near(2313.8968, symmetric.ShearModulus, 5e-5);
        Near(450090.136, symmetric.D(1, 1), 5e-4);
        Near(228667.451, symmetric.D(1, 6), 5e-4);
        Near(333201.143, symmetric.D(6, 6), 5e-4);
        var two = new Laminate([W(6, 45), W(6, -45)]);
        Near(-76222.4836, two.B(1, 6), 5e-5);
        Near(450090.136, two.D(1, 1), 5e-4);
        Near(221624.086, two.FreeStripAlong, 5e-4);
        PlyMaterial glass = new(18000, 18000, 4000, 0.13);
        var faced = new Laminate([new(glass, 0.5, 0), W(6, 45), W(6, -45), new(glass, 0.5, 0)]);
        Near(1165683.667, faced.D(1, 1), 5e-4);
        Near(947048.747, faced.FreeStripAlong, 5e-4);
    }

    /// <summary>A textbook's transformed section (wood 140 by 400 mm under a steel plate of 200 by 8, as read), and strips worked out by hand.</summary>
    [Fact]
    public void TransformedSections()
    {
        // For each mm of the wood's width there are 200/140 of the plate's.
        var beam = new Laminate([Beam(12500, 400), Beam(200000.0 * 200 / 140, 8)]);
        Near(1.847424e13, 140 * beam.FreeStripAlong, 1e7);
        // From the outside in, as they are published.
        Near(467775, Strip((7700, 9)), 1e-3);
        Near(969441.6667, Strip((10000, 1), (7700, 9), (10000, 1)), 1e-3);
        Near(6283260, Strip((13400, 6), (670, 6), (13400, 6)), 1e-2);
        Near(9754253.0352, Strip((9000, 1.4), (7700, 6), (1200, 6), (1200, 6), (7700, 6)), 1e-2);

        static double Strip(params (double E, double T)[] plies) =>
            new Laminate([.. plies.Reverse().Select(p => Beam(p.E, p.T))]).FreeStripAlong;

        static Ply Beam(double modulus, double t) => new(new(modulus, modulus, modulus, 0), t, 0);
    }

    /// <summary>Faces moved apart by a core of next to nothing: 7 and 37 times as stiff, as makers print it.</summary>
    [Theory]
    [InlineData(2, 7)]
    [InlineData(4, 37)]
    [InlineData(8, 169)]
    public void Sandwiches(double depths, double ratio)
    {
        PlyMaterial face = new(70000, 70000, 26000, 0.0),
            core = new(1e-6, 1e-6, 1e-6, 0);
        var solid = new Laminate([new(face, 1, 0)]);
        var apart = new Laminate([new(face, 0.5, 0), new(core, depths - 1, 0), new(face, 0.5, 0)]);
        Near(ratio, Deflections.SandwichRatio(depths), 1e-12);
        Near(ratio, apart.FreeStripAlong / solid.FreeStripAlong, 1e-6);
    }

    /// <summary>Wood at an angle and glued in balance, parts of its stiffness along the grain: ET 0.050, GLT 0.078, ν 0.449 (Wood Handbook's ratios of Douglas-fir, second hand).</summary>
    [Fact]
    public void WoodAtAnAngleAndInBalance()
    {
        PlyMaterial fir = new(1, 0.050, 0.078, 0.449);
        (double Degrees, double Part)[] known =
        [
            (0, 1),
            (15, 0.58637),
            (30, 0.24704),
            (45, 0.12150),
            (60, 0.07381),
            (90, 0.05),
        ];
        foreach ((double degrees, double part) in known)
        {
            Near(part, fir.ModulusAt(degrees), 5e-6);
            Near(part, new Laminate([new(fir, 1, degrees)]).ModulusAlong, 5e-6);
        }

        Balanced(0.24335, 0.25383, 45, -45);
        Balanced(0.62195, 0.16592, 0, 45, -45, 0);
        Balanced(0.52938, 0.07800, 0, 90);
        Balanced(0.48773, 0.20988, 30, -30);

        void Balanced(double along, double shear, params double[] degrees)
        {
            var laminate = new Laminate([.. degrees.Select(d => new Ply(fir, 1, d))]);
            Near(along, laminate.ModulusAlong, 5e-6);
            Near(shear, laminate.ShearModulus, 5e-6);
        }
    }

    /// <summary>Turned by a right angle along is across; turned by any angle what does not care for directions stays.</summary>
    [Fact]
    public void TurnedAsAWhole()
    {
        var whole = new Laminate(Case20);
        for (double turn = -80; turn < 180; turn += 35)
        {
            var turned = new Laminate([
                .. Case20.Select(p => p with { Degrees = p.Degrees + turn }),
            ]);
            Near(
                whole.D(1, 1) + whole.D(2, 2) + (2 * whole.D(1, 2)),
                turned.D(1, 1) + turned.D(2, 2) + (2 * turned.D(1, 2)),
                1e-3
            );
            Near(whole.D(6, 6) - whole.D(1, 2), turned.D(6, 6) - turned.D(1, 2), 1e-3);
            var across = new Laminate([
                .. Case20.Select(p => p with { Degrees = p.Degrees + turn + 90 }),
            ]);
            Near(turned.FreeStripAlong, across.FreeStripAcross, 1e-3);
        }
    }

    /// <summary>Resin alone is resin, fibres alone are fibres, and between the two nothing leaves the two.</summary>
    [Fact]
    public void FibresInResin()
    {
        PlyMaterial resin = PlyMaterial.OfFibres(72000, 0.22, 3000, 0.35, 0),
            half = PlyMaterial.OfFibres(72000, 0.22, 3000, 0.35, 0.5),
            fibre = PlyMaterial.OfFibres(72000, 0.22, 3000, 0.35, 1);
        Near(3000, resin.E1, 1e-9);
        Near(3000, resin.E2, 1e-9);
        Near(72000, fibre.E2, 1e-6);
        Near(72000 / 2.44, fibre.G12, 1e-6);
        Near(37500, half.E1, 1e-9);
        Assert.InRange(half.E2, 3000, 37500);
    }

    private static void Near(double wanted, double found, double within) =>
        Assert.Equal(wanted, found, within);
}
