using System.Collections.Immutable;

namespace PlankFit.Planking.Wood;

/// <summary>
/// The woods that come with the program. The figures are those of the USDA Forest Products Laboratory's Wood Handbook (FPL-GTR-190 and 282, tables 4-3,
/// 5-3, 5-5, 13-5) as far as they could be found quoted; what is recalled and not read says so.
/// </summary>
public static class SpeciesTable
{
    private const string Osu =
        "Wood Handbook, as quoted in Oregon State University's table of relative properties";
    private const string DataBase = "Wood Handbook, second hand";
    private const string Code5 = "Wood Handbook table 5-3b, second hand";
    private const string Code13 = "Wood Handbook table 13-5, second hand";
    private const string Code12 = "Wood Handbook chapter 12, second hand";
    private const string Notes = "Wood Handbook, second hand, no page named";
    private const string Merchant = "Wood Handbook, second hand";
    private const string Manual =
        "US Army TM 5-852-4, table 2-2 (by courtesy of the Forest Products Laboratory)";
    private const string Weights = "a table of weights and measures that quotes the Wood Handbook";
    private const string Recalled = "Wood Handbook, recalled and not read";
    private const string Weak = "recalled and not read, and weakly: weigh and test your own";

    public static readonly ImmutableArray<Species> BuiltIn =
    [
        new("douglas-fir", "Douglas-fir, coast", WoodKind.Solid)
        {
            Gravity = Quoted(0.48, Osu),
            Rupture = Quoted(85, Osu),
            Modulus = Quoted(13400, Osu),
            ShrinkRadial = Memory(4.8),
            ShrinkTangential = Quoted(7.6, Osu),
            MoveRadial = Memory(0.00165),
            MoveTangential = Memory(0.00267),
        },
        new("douglas-fir-interior-south", "Douglas-fir, interior south", WoodKind.Solid)
        {
            Gravity = Quoted(0.46, DataBase),
            Rupture = Quoted(82, DataBase),
            Modulus = Quoted(10300, DataBase),
        },
        new("white-oak", "White oak", WoodKind.Solid)
        {
            Gravity = Memory(0.68),
            Rupture = Quoted(104.8, Notes),
            Modulus = Quoted(12270, Code5),
            ShrinkRadial = Memory(5.6),
            ShrinkTangential = Memory(10.5),
            MoveRadial = Quoted(0.0018, Code13),
            MoveTangential = Quoted(0.00365, Code13),
        },
        new("western-redcedar", "Western redcedar", WoodKind.Solid)
        {
            Gravity = Memory(0.32),
            Rupture = Quoted(51.7, Merchant),
            Modulus = Quoted(7660, Merchant),
            ShrinkRadial = Quoted(2.4, Merchant),
            ShrinkTangential = Quoted(5.0, Merchant),
            MoveRadial = Weakly(0.00111),
            MoveTangential = Weakly(0.00234),
        },
        new("sitka-spruce", "Sitka spruce", WoodKind.Solid)
        {
            Gravity = new(0.40, SourceTag.Read, Manual),
            Rupture = Memory(70),
            Modulus = Quoted(10800, Weights),
            ShrinkRadial = Memory(4.3),
            ShrinkTangential = Memory(7.5),
            MoveRadial = Memory(0.00148),
            MoveTangential = Memory(0.00263),
        },
        new("alaska-yellow-cedar", "Alaska yellow-cedar", WoodKind.Solid)
        {
            Gravity = new(0.44, SourceTag.Read, Manual),
            Rupture = Memory(77),
            Modulus = Quoted(9800, Weights),
            ShrinkRadial = Memory(2.8),
            ShrinkTangential = Memory(6.0),
        },
        new("eastern-white-pine", "Eastern white pine", WoodKind.Solid)
        {
            Gravity = Memory(0.35),
            Rupture = Memory(59),
            Modulus = Quoted(8550, Code5),
            ShrinkRadial = Memory(2.1),
            ShrinkTangential = Memory(6.1),
            MoveRadial = Quoted(0.00071, Code13),
            MoveTangential = Quoted(0.00212, Code13),
        },
        new("mahogany", "Mahogany, true (Swietenia)", WoodKind.Solid)
        {
            Gravity = Memory(0.45),
            Rupture = Memory(79),
            Modulus = Memory(10300),
            ShrinkRadial = Memory(3.0),
            ShrinkTangential = Memory(4.1),
            MoveRadial = Quoted(0.00172, Code13),
            MoveTangential = Quoted(0.00238, Code13),
        },
        new("okoume", "Okoume", WoodKind.Solid)
        {
            Gravity = Weakly(0.33),
            Rupture = Weakly(51),
            Modulus = Weakly(7900),
        },
        new("teak", "Teak", WoodKind.Solid)
        {
            MoveRadial = Quoted(0.00100, Code13),
            MoveTangential = Quoted(0.00186, Code13),
        },
        new("douglas-fir-plywood", "Douglas-fir plywood", WoodKind.Plywood)
        {
            Gravity = Weakly(0.50),
            MoveRadial = Quoted(0.0002, Code12),
            MoveTangential = Quoted(0.0002, Code12),
        },
        new("okoume-plywood", "Okoume plywood", WoodKind.Plywood)
        {
            Gravity = Weakly(0.41),
            MoveRadial = Quoted(0.0002, Code12),
            MoveTangential = Quoted(0.0002, Code12),
        },
    ];

    public static Species? Find(ImmutableArray<Species> table, string name) =>
        table.FirstOrDefault(s => s.Name == name);

    private static Sourced Quoted(double value, string source) =>
        new(value, SourceTag.SecondHand, source);

    private static Sourced Memory(double value) => new(value, SourceTag.Memory, Recalled);

    private static Sourced Weakly(double value) => new(value, SourceTag.Memory, Weak);
}
