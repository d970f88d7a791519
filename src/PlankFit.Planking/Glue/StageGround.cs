namespace PlankFit.Planking.Glue;

/// <summary>With what a layer's stage is planned.</summary>
internal sealed record StageGround(
    AmountPlanner Amounts,
    BatchPlacing Placing,
    WorkDays Days,
    PlankHolds Holds
);
