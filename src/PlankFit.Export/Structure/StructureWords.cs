using PlankFit.Planking.Structure;
using PlankFit.Planking.Structure.Laminates;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Structure;

/// <summary>Stiffness and mass in the words of the bench.</summary>
internal static class StructureWords
{
    private const double KgPerLb = AmountText.KgPerPound,
        LbIn2OfNmm2 = 1 / (4.4482216152605 * 25.4 * 25.4),
        MPaOfPsi = 0.006894757293168361;

    public const string Never =
        "A comparison by nominal constants of clear wood and sound laminate, and never an approval. Knots, slope of grain, moisture, voids, joints, blows and the bond decide what a bottom bears: "
        + "have it judged by the standard that applies where you are (ISO 12215-5 and the like) and by a qualified person.";

    /// <summary>EI of N mm² for each mm of width, as <see cref="StiffnessUnit"/> says.</summary>
    public static string Stiffness(double nmm2PerMm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Padded(nmm2PerMm / 1e6, 3)
            : NumberText.Padded(nmm2PerMm * 25.4 * LbIn2OfNmm2 / 1000, 2);

    public static string StiffnessUnit(LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? "kN m² for a metre of width"
            : "thousands of lb in² for an inch of width";

    public static string PerArea(double kgPerM2, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Padded(kgPerM2, 2)} kg/m²"
            : $"{NumberText.Padded(kgPerM2 / KgPerLb / 10.7639104167, 2)} lb/sq ft";

    /// <summary>An amount of the bill with its unit: lengths in feet and inches have square feet, cubic feet and pounds. What comes off a roll is written as the list of what to order writes it; feet and inches carry their own marks.</summary>
    public static (string Amount, string Unit) Amount(BillRow row, LengthUnit unit)
    {
        if (row.Unit == "m")
        {
            string[] length = LengthText.ToOrder(1000 * row.Amount, unit).Split(' ', 2);
            return (length[0], length.Length > 1 ? length[1] : "");
        }

        (double factor, string shown, int decimals) = (row.Unit, LengthUnits.IsMetric(unit)) switch
        {
            ("m³", true) => (1, "m³", 3),
            ("m³", false) => (35.3146667215, "cu ft", 2),
            ("m²", false) => (10.7639104167, "sq ft", 1),
            ("kg", false) => (1 / KgPerLb, "lb", 2),
            ("m²" or "kg", true) => (1, row.Unit, 2),
            _ => (1, row.Unit, 0),
        };
        double amount = factor * row.Amount;
        // Weighed out it is bought up to the next hundredth, as the list of what to order has it.
        return row.Unit == "kg"
            ? (NumberText.Padded(Math.Ceiling((100 * amount) - 1e-9) / 100, 2), shown)
            : (NumberText.Padded(amount, decimals), shown);
    }

    /// <summary>12.34 cu ft; 47'-7"; 4 boards; 1 board.</summary>
    public static string Shown(BillRow row, LengthUnit unit)
    {
        (string amount, string called) = Amount(row, unit);
        return row is { Unit: "boards", Amount: 1 } ? "1 board" : $"{amount} {called}".TrimEnd();
    }

    public static string Mass(double kg, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Padded(kg, 1)} kg"
            : $"{NumberText.Padded(kg / KgPerLb, 1)} lb";

    /// <summary>A deflection, mm to 1/100, inches to 1/1000: it is compared and not measured.</summary>
    public static string Deflection(double? mm, LengthUnit unit) =>
        mm is not { } d ? "-"
        : LengthUnits.IsMetric(unit) ? NumberText.Padded(d, 2) + " mm"
        : NumberText.Padded(d / LengthUnits.MmPerInch, 4) + " in";

    public static string Pressure(double mpa, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Trimmed(1000 * mpa, 1)} kPa"
            : $"{NumberText.Trimmed(mpa / MPaOfPsi, 2)} psi";

    public static string Load(double newtons, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Trimmed(newtons, 0)} N, which is {NumberText.Trimmed(newtons / 9.80665, 1)} kg"
            : $"{NumberText.Trimmed(newtons / 4.4482216152605, 1)} lb";

    /// <summary>Down to a whole ten newtons or two pounds, or to a tenth of that where it is less: what a bag of sand is filled to.</summary>
    public static double RoundLoad(double newtons, LengthUnit unit)
    {
        double step = LengthUnits.IsMetric(unit) ? 10 : 2 * 4.4482216152605;
        step = newtons < step ? step / 10 : step;
        return Math.Floor(newtons / step) * step;
    }

    /// <summary>Stiffness of a stuff as <see cref="ModulusUnit"/> says.</summary>
    public static string Modulus(double mpa, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? NumberText.Padded(mpa, 0)
            : NumberText.Padded(mpa / MPaOfPsi / 1e6, 3);

    public static string ModulusUnit(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? "MPa" : "millions of psi";

    /// <summary>What is hung from a strip: <c>57.6 N, 5.87 kg</c>; <c>12.95 lb</c>.</summary>
    public static string Hung(double newtons, LengthUnit unit) =>
        LengthUnits.IsMetric(unit)
            ? $"{NumberText.Padded(newtons, 1)} N, {NumberText.Padded(newtons / 9.80665, 2)} kg"
            : $"{NumberText.Padded(newtons / 4.4482216152605, 2)} lb";

    /// <summary>A part of the first's, as planned 100 %.</summary>
    public static string Against(double value, double first) =>
        NumberText.Padded(100 * value / first, 0) + " %";

    /// <summary>What a coupon of a stack gives way by: free, held from twisting, and what shear adds to either.</summary>
    public static (double Free, double Held, double Shear) Coupon(
        CouponSpec coupon,
        Laminate laminate
    ) =>
        (
            Bend(laminate.FreeStripAlong, coupon),
            Bend(laminate.TwistHeldAlong, coupon),
            Deflections.CouponShearMm(
                coupon.Newtons,
                coupon.SpanMm,
                coupon.WidthMm,
                laminate.ThicknessMm,
                WoodShear(laminate)
            )
        );

    /// <summary>At 45 degrees, the mean of shear along the grain and of rolling shear.</summary>
    private static double WoodShear(Laminate laminate) =>
        (laminate.Plies.MaxBy(p => p.ThicknessMm)!.Material.G12 + WoodRatios.RollingMPa) / 2;

    private static double Bend(double stiffness, CouponSpec coupon) =>
        Deflections.CouponMm(coupon.Newtons, coupon.SpanMm, coupon.WidthMm, stiffness);
}
