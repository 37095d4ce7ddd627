#!/bin/bash
#SBATCH --array=1-50
#SBATCH --cpus-per-task=2
#SBATCH --time=01:00:00
# One part of a sweep for each job; car.json, corner.json and foreload.jar lie in the folder it is sent from:
#   sbatch job-array.sh
# When all are done:
#   java -jar foreload.jar join part-*.jsonl
set -euo pipefail
part=$SLURM_ARRAY_TASK_ID
java -jar foreload.jar explore --car car.json --corner corner.json --resolution 5 --quiet \
    --shard "$part/$SLURM_ARRAY_TASK_COUNT" --checkpoint "part-$part.checkpoint" > "part-$part.jsonl"
