using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Jobs;

/// <summary>[job]: what it is called, and its unit.</summary>
public static class HeadKeys
{
    public static readonly TextKey Name = new(
        "name",
        "\"My launch\"",
        "What the job is called, on every sheet."
    )
    {
        AskedFor = "the name that stands on every sheet",
    };

    public static readonly ChoiceKey<LengthUnit> Units = new(
        "units",
        [.. LengthUnits.Accepted.Split(", ").Select(name => (name, LengthUnits.Find(name)!.Value))],
        "The unit of every bare number in the job and its tables, and that in which sheets give lengths: feet and inches for in, ft and ft-in-8, the lofting table's feet-inches-eighths."
    )
    {
        Required = true,
    };

    public static readonly JobTable Table = new(Name, Units);
}
