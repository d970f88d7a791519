using BenchmarkDotNet.Running;

// dotnet run -c Release --project tests/PlankFit.Benchmarks -- --filter '*' --job short
BenchmarkSwitcher.FromAssembly(typeof(PlankFit.Benchmarks.KernelBenchmarks).Assembly).Run(args);
