using PlankFit.Planking.Layers;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>[ends.topside] and [[ends.topside.zone]]: what is done with ends of another panel than the bottom, under the panel's own name.</summary>
internal static class PanelEndKeys
{
    private static readonly TableKey Lower = EndKeys.Edge(
        "lower",
        "{ cut = \"left long\", by = 25 }",
        "What is done with ends at the panel's lower edge.",
        EndRules.LeftLong.Lower
    );

    private static readonly TableKey Upper = EndKeys.Edge(
        "upper",
        "{ cut = \"left long\", by = 25 }",
        "What is done with ends at its upper edge.",
        EndRules.LeftLong.Upper
    );

    private static readonly TableKey Transom = EndKeys.Edge(
        "transom",
        "{ cut = \"left long\", by = 25 }",
        "What is done with its ends at the transom.",
        EndRules.LeftLong.Transom
    );

    private static readonly TableKey Stem = EndKeys.Edge(
        "stem",
        "{ cut = \"left long\", by = 25 }",
        "What is done with its ends at the stem.",
        EndRules.LeftLong.Stem
    );

    public static EdgeKeys Of(string panel) =>
        new(
            Lower,
            Upper,
            Transom,
            Stem,
            new(
                $"ends.{panel}.zone",
                "A stretch of the hull where ends of the panel are done otherwise; an end lies in one stretch only.",
                EdgeKeys.ZoneTable(Lower, Upper, Transom, Stem)
            )
        );

    /// <summary>The panel's table under [ends].</summary>
    public static TableKey Under(string panel) =>
        TableKey.Headed(
            $"ends.{panel}",
            "What is done with ends of a [[panel]], under the panel's own name.",
            Of(panel).Table
        );
}
